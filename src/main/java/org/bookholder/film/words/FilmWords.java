package org.bookholder.film.words;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.follow.model.Attempt;
import org.bookholder.handoff.captions.CaptionFiles;
import org.bookholder.handoff.captions.TimedWord;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.timing.StreamTime;

/**
 * What is said in a film, and when.
 *
 * @param lines the lines that are heard, in the film's order
 * @param chapters its chapters, in order; none if the script has no headings
 * @param length how long the film is
 */
public record FilmWords(List<Line> lines, List<Chapter> chapters, StreamTime length) {
    /**
     * A line as it is said.
     *
     * @param number its number, from 1
     * @param paragraph its paragraph in the script, from 0
     * @param words its words with their times in the film
     */
    public record Line(int number, int paragraph, List<TimedWord> words) {
        /** Copies the list. */
        public Line {
            words = List.copyOf(words);
        }

        String text() {
            return words.stream().map(TimedWord::text).collect(Collectors.joining(" "));
        }
    }

    /**
     * A chapter.
     *
     * @param title its heading
     * @param start when it begins in the film
     */
    public record Chapter(String title, StreamTime start) {}

    /** Copies the lists. */
    public FilmWords {
        lines = List.copyOf(lines);
        chapters = List.copyOf(chapters);
    }

    /** The words of a film of a lesson. */
    public static FilmWords of(FilmPlan plan, Script script) {
        List<Line> lines = new ArrayList<>();
        for (FilmClip clip : plan.clips()) {
            for (Attempt attempt : clip.attempts()) {
                // An attempt that goes on in the next piece is told where it begins.
                if (!attempt.start().isBefore(clip.in()) || lines.isEmpty()) {
                    ScriptLine line = script.lines().get(attempt.line() - 1);
                    lines.add(new Line(line.number(), line.paragraph(), inFilm(plan, clip, line, attempt)));
                }
            }
        }
        return new FilmWords(lines, chapters(plan, script), plan.length());
    }

    private static List<TimedWord> inFilm(FilmPlan plan, FilmClip clip, ScriptLine line, Attempt attempt) {
        StreamTime start = new StreamTime(plan.tickOf(clip.start()));
        return SaidWords.of(line.words(), attempt).stream()
                .map(word -> new TimedWord(
                        word.text(),
                        start.plus(word.start().since(clip.in())),
                        start.plus(word.end().since(clip.in()))))
                .toList();
    }

    /** A chapter begins at the first line after its heading that is in the film; one without any such line is none. */
    private static List<Chapter> chapters(FilmPlan plan, Script script) {
        List<Chapter> chapters = new ArrayList<>();
        String heading = script.title();
        boolean headings = false;
        for (ScriptElement element : script.elements()) {
            if (element instanceof Direction direction && direction.heading()) {
                heading = direction.text();
                headings = true;
            } else if (element instanceof ScriptLine line && !heading.isEmpty()) {
                long start = begins(plan, line.number());
                if (start >= 0) {
                    StreamTime at = chapters.isEmpty() ? StreamTime.ZERO : new StreamTime(start);
                    chapters.add(new Chapter(heading, at));
                    heading = "";
                }
            }
        }
        return headings ? chapters : List.of();
    }

    /** The tick of the film at which a line begins; -1 if it is not in it. */
    private static long begins(FilmPlan plan, int line) {
        for (FilmClip clip : plan.clips()) {
            for (Attempt attempt : clip.attempts()) {
                if (attempt.line() == line) {
                    return plan.tickOf(clip.start())
                            + attempt.start().since(clip.in()).ticks();
                }
            }
            if (clip.attempts().isEmpty() && clip.firstLine() == line) {
                return plan.tickOf(clip.start());
            }
        }
        return -1;
    }

    /** Captions as WebVTT. */
    public String webVtt() {
        return CaptionFiles.webVtt(lines.stream().map(Line::words).toList());
    }

    /** Captions as SubRip. */
    public String subRip() {
        return CaptionFiles.subRip(lines.stream().map(Line::words).toList());
    }

    /** What is said as running text, paragraph by paragraph. */
    public String transcript() {
        StringBuilder text = new StringBuilder();
        int paragraph = -1;
        for (Line line : lines) {
            text.append(text.isEmpty() ? "" : line.paragraph() == paragraph ? " " : "\n\n")
                    .append(line.text());
            paragraph = line.paragraph();
        }
        return text + "\n";
    }

    /** The chapters in FFmpeg's own form of notes on a film; the title first. */
    public String notes(String title) {
        StringBuilder text = new StringBuilder(";FFMETADATA1\ntitle=" + escaped(title) + "\n");
        for (int i = 0; i < chapters.size(); i++) {
            StreamTime end = i + 1 < chapters.size() ? chapters.get(i + 1).start() : length;
            text.append("[CHAPTER]\nTIMEBASE=1/1000\nSTART=")
                    .append(millis(chapters.get(i).start()))
                    .append("\nEND=")
                    .append(millis(end))
                    .append("\ntitle=")
                    .append(escaped(chapters.get(i).title()))
                    .append('\n');
        }
        return text.toString();
    }

    private static long millis(StreamTime time) {
        return time.ticks() * 1000 / StreamTime.TICKS_PER_SECOND;
    }

    private static String escaped(String text) {
        return text.replaceAll("([=;#\\\\])", "\\\\$1").replaceAll("\\R", " ");
    }
}
