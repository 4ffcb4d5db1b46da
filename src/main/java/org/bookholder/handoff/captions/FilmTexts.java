package org.bookholder.handoff.captions;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.timing.StreamTime;

/**
 * The texts that go with a film, in the film's time: captions as WebVTT and SubRip, a transcript, and chapters if the
 * script has headings.
 *
 * @param script the script
 * @param spoken what is said in the film, in order of time
 * @param length the film's length
 */
public record FilmTexts(Script script, List<SpokenLine> spoken, StreamTime length) {
    /** Copies the list. */
    public FilmTexts {
        spoken = List.copyOf(spoken);
    }

    /**
     * The files.
     *
     * @param name the beginning of their names
     */
    public List<HandOffFile> files(String name) {
        List<Caption> captions = captions();
        List<HandOffFile> files = new ArrayList<>();
        files.add(HandOffFile.text(name + ".vtt", out -> out.append(CaptionFiles.webVtt(captions))));
        files.add(HandOffFile.text(name + ".srt", out -> out.append(CaptionFiles.subRip(captions))));
        files.add(HandOffFile.text(name + "-transcript.txt", out -> out.append(transcript())));
        List<Chapter> chapters = chapters();
        if (!chapters.isEmpty()) {
            files.add(HandOffFile.text(name + "-chapters.vtt", out -> out.append(CaptionFiles.webVtt(cues(chapters)))));
            files.add(HandOffFile.text(name + "-chapters.txt", out -> list(chapters, out)));
        }
        return files;
    }

    /** The captions as WebVTT (W3C). */
    public String webVtt() {
        return CaptionFiles.webVtt(captions());
    }

    /** The captions as SubRip. */
    public String subRip() {
        return CaptionFiles.subRip(captions());
    }

    private List<Caption> captions() {
        return new CaptionWriter(CaptionRules.standard())
                .write(spoken.stream().map(SpokenLine::words).toList());
    }

    /** The chapters, in order; none if the script has no headings. */
    public List<Chapter> chapters() {
        return Chapter.of(script, spoken);
    }

    /** The title, the headings, and what is said in paragraphs as in the script. */
    public String transcript() {
        StringBuilder out = new StringBuilder(script.title());
        Optional<ScriptLine> before = Optional.empty();
        for (SpokenLine line : spoken) {
            Optional<ScriptLine> now =
                    line.line() == 0 ? before : Optional.of(script.lines().get(line.line() - 1));
            boolean same = before.isPresent()
                    && before.get().paragraph() == now.orElseThrow().paragraph();
            if (now.isPresent() && !same) {
                for (String heading : headings(before, now.get())) {
                    out.append("\n\n").append(heading);
                }
            }
            out.append(same ? " " : "\n\n").append(line.text());
            before = now;
        }
        return out.append('\n').toString();
    }

    /** The headings of the part that a line belongs to; empty if the line said before it is of the same part. */
    private List<String> headings(Optional<ScriptLine> before, ScriptLine line) {
        List<Direction> part = part(line);
        boolean same = before.isPresent() && part(before.get()).equals(part);
        return same ? List.of() : part.stream().map(Direction::text).toList();
    }

    /** The headings that stand together before a line, with no other heading after them. */
    private List<Direction> part(ScriptLine line) {
        List<Direction> part = new ArrayList<>();
        boolean begun = false;
        for (ScriptElement element : script.elements()) {
            if (element.equals(line)) {
                return part;
            }
            if (element instanceof ScriptLine) {
                begun = true;
            } else if (element instanceof Direction direction && direction.heading()) {
                if (begun) {
                    part.clear();
                    begun = false;
                }
                part.add(direction);
            }
        }
        return part;
    }

    /** W3C WebVTT, "chapter cues": each lasts until the next begins. */
    private List<Caption> cues(List<Chapter> chapters) {
        List<Caption> cues = new ArrayList<>();
        for (int i = 0; i < chapters.size(); i++) {
            Chapter chapter = chapters.get(i);
            StreamTime end = i + 1 < chapters.size() ? chapters.get(i + 1).start() : length;
            cues.add(new Caption(
                    chapter.start(),
                    StreamTime.max(end, chapter.start().plus(StreamTime.ofSeconds(0.001))),
                    List.of(chapter.title())));
        }
        return cues;
    }

    /** A line for each chapter with its time, as sites take it in a description (common practice). */
    private void list(List<Chapter> chapters, Appendable out) throws IOException {
        boolean hours = length.seconds() >= 3600;
        for (Chapter chapter : chapters) {
            long seconds = (long) chapter.start().seconds();
            out.append(hours ? String.format(Locale.ROOT, "%d:", seconds / 3600) : "")
                    .append(String.format(
                            Locale.ROOT,
                            "%02d:%02d %s\n",
                            hours ? seconds / 60 % 60 : seconds / 60,
                            seconds % 60,
                            chapter.title()));
        }
    }
}
