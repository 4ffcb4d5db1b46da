package org.bookholder.script.source;

import com.github.difflib.DiffUtils;
import com.github.difflib.patch.AbstractDelta;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.AgeingFact;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.normalize.TextNormalizer;

/**
 * The lines and words into which a script was divided when it was read. A later version of the program may divide the same text in
 * another way; what is stored of a session counts lines and words by the old way.
 *
 * @param words for each line, in order, its words as written
 */
public record RecordedLines(List<List<String>> words) {
    /** Of a session that was recorded before lines were stored: the text is divided as it is today. */
    public static final RecordedLines UNKNOWN = new RecordedLines(List.of());

    /** Copies the lists. */
    public RecordedLines {
        words = words.stream().map(List::copyOf).toList();
    }

    /** The lines of a script. */
    public static RecordedLines of(Script script) {
        return new RecordedLines(script.lines().stream()
                .map(line -> line.words().stream().map(ScriptWord::written).toList())
                .toList());
    }

    /**
     * The script with these lines. A word that is still one has the spoken forms that it has today; directions stay before the same
     * words.
     *
     * @param today the same text, divided as it is today
     * @return {@code today} itself if it has these lines, or if they are not known
     */
    public Script in(Script today) {
        boolean usable = !words.isEmpty() && words.stream().noneMatch(List::isEmpty);
        return !usable || equals(of(today)) ? today : new Division(today).script();
    }

    /**
     * Makes a script from its text, with these lines.
     *
     * @param source where it came from, which says what markup it has
     * @throws ProblemException if this version cannot read the text
     */
    public Script parse(String text, String source) throws ProblemException {
        return in(ScriptReader.parse(text, source, ScriptReader.Format.of(source)));
    }

    /** A word of today's division: the line that it is in, and its place there, from 0. */
    private record Place(ScriptLine line, int index) {
        ScriptWord word() {
            return line.words().get(index);
        }
    }

    /** A text that is to be divided as it was. */
    private final class Division {
        private final Script today;
        private final WordSplitter splitter;
        private final List<Place> places;

        /** For each of today's words, which recorded word stands in its place, counted through the text from 0. */
        private final int[] recorded;

        /** For each recorded word, today's word in its place. */
        private final int[] now;

        /** Whether that is the same word. */
        private final boolean[] same;

        Division(Script today) {
            this.today = today;
            splitter = new WordSplitter(TextNormalizer.of(today.settings().language()));
            places = today.lines().stream().flatMap(Division::places).toList();
            List<String> before = words.stream().flatMap(List::stream).toList();
            recorded = new int[places.size()];
            now = new int[before.size()];
            same = new boolean[before.size()];
            align(before, places.stream().map(place -> place.word().written()).toList());
        }

        private static Stream<Place> places(ScriptLine line) {
            return Stream.iterate(0, i -> i < line.words().size(), i -> i + 1).map(i -> new Place(line, i));
        }

        private void align(List<String> before, List<String> after) {
            int from = 0;
            int to = 0;
            for (AbstractDelta<String> delta : DiffUtils.diff(before, after).getDeltas()) {
                while (from < delta.getSource().getPosition()) {
                    pair(from++, to++);
                }
                int gone = delta.getSource().size();
                int fresh = delta.getTarget().size();
                for (int i = 0; i < gone; i++) {
                    now[from + i] = Math.min(to + Math.min(i, Math.max(0, fresh - 1)), after.size() - 1);
                }
                for (int i = 0; i < fresh; i++) {
                    recorded[to + i] = Math.min(from + Math.min(i, Math.max(0, gone - 1)), before.size() - 1);
                }
                from += gone;
                to += fresh;
            }
            while (from < before.size()) {
                pair(from++, to++);
            }
        }

        private void pair(int word, int place) {
            now[word] = place;
            recorded[place] = word;
            same[word] = true;
        }

        Script script() {
            List<ScriptLine> lines = lines();
            return new Script(
                    today.title(),
                    today.source(),
                    today.settings(),
                    elements(lines),
                    today.facts().stream().map(this::fact).toList(),
                    today.covers().stream().map(this::cover).toList());
        }

        private List<ScriptLine> lines() {
            List<ScriptLine> lines = new ArrayList<>();
            int first = 0;
            for (List<String> written : words) {
                List<ScriptWord> line = new ArrayList<>();
                for (int i = 0; i < written.size(); i++) {
                    line.add(same[first + i] ? places.get(now[first + i]).word() : said(written.get(i)));
                }
                ScriptLine from = places.get(now[first]).line();
                lines.add(new ScriptLine(lines.size() + 1, line, from.paragraph(), from.sourceLine(), from.speaker()));
                first += written.size();
            }
            return lines;
        }

        /** A word that today's division does not have. */
        private ScriptWord said(String written) {
            MarkedSourceLine alone = MarkedSourceLine.plain(written);
            List<ScriptWord> parts = splitter.split(alone, 0, alone.text().length());
            List<String> spoken = parts.stream()
                    .flatMap(part -> part.spoken().get(0).stream())
                    .toList();
            return new ScriptWord(
                    written,
                    List.of(spoken.isEmpty() ? List.of(written.toLowerCase(Locale.ROOT)) : spoken),
                    ScriptWord.Emphasis.NONE);
        }

        /** Directions where they are today, and before each of today's lines the recorded lines that begin in it. */
        private List<ScriptElement> elements(List<ScriptLine> lines) {
            List<ScriptElement> elements = new ArrayList<>();
            int next = 0;
            int first = 0;
            for (ScriptElement element : today.elements()) {
                if (element instanceof ScriptLine line) {
                    while (next < lines.size() && places.get(now[first]).line().number() <= line.number()) {
                        elements.add(lines.get(next));
                        first += lines.get(next).words().size();
                        next++;
                    }
                } else {
                    elements.add(element);
                }
            }
            return elements;
        }

        private AgeingFact fact(AgeingFact fact) {
            return new AgeingFact(
                    fact.text(), fact.due(), recorded(fact.line(), 1).line());
        }

        private Cover cover(Cover cover) {
            RecordedPlace place = recorded(cover.line(), cover.word());
            return new Cover(cover.file(), cover.text(), place.line(), place.word(), cover.sourceLine());
        }

        /** Where a word of today's line is in the recorded ones; both counted from 1. */
        private RecordedPlace recorded(int line, int word) {
            int place = 0;
            while (places.get(place).line().number() < line) {
                place++;
            }
            int left = recorded[place + word - 1];
            int number = 0;
            while (left >= words.get(number).size()) {
                left -= words.get(number++).size();
            }
            return new RecordedPlace(number + 1, left + 1);
        }
    }

    private record RecordedPlace(int line, int word) {}
}
