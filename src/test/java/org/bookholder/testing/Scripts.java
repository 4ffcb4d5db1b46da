package org.bookholder.testing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.script.model.ScriptSettings.LineBreaks;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.model.ScriptWord.Emphasis;

/** Small scripts made by hand, without the parser: a word is spoken as it is written, in lower case. */
public final class Scripts {
    private Scripts() {}

    /** A script of these lines with the default target pace; a line that begins with {@code "> "} is a direction. */
    public static Script of(String... lines) {
        return at(ScriptSettings.DEFAULT_PACE, lines);
    }

    /** Likewise with a target pace in words per minute. */
    public static Script at(int targetPace, String... lines) {
        List<ScriptElement> elements = new ArrayList<>();
        int number = 0;
        for (int i = 0; i < lines.length; i++) {
            elements.add(
                    lines[i].startsWith("> ")
                            ? new Direction(lines[i].substring(2), i, i + 1)
                            : line(++number, i, i + 1, lines[i]));
        }
        return new Script(
                "A lesson",
                "lesson.md",
                new ScriptSettings(targetPace, "en-US", LineBreaks.SENTENCES, ScriptSettings.Wording.FREE),
                elements);
    }

    /** A script of {@code lines} lines with {@code words} different words each, spoken "a", "b", ... "z", "ba", .... */
    public static Script sized(int targetPace, int lines, int words) {
        return at(
                targetPace,
                IntStream.range(0, lines)
                        .mapToObj(line -> String.join(
                                " ",
                                IntStream.range(line * words, (line + 1) * words)
                                        .mapToObj(Scripts::letters)
                                        .toList()))
                        .toArray(String[]::new));
    }

    /** One word as it stands in a script; {@code spoken} are the ways to say it, each with spaces between its words. */
    public static ScriptWord word(String written, String... spoken) {
        Stream<String> ways = spoken.length == 0 ? Stream.of(plain(written)) : Arrays.stream(spoken);
        return new ScriptWord(written, ways.map(way -> List.of(way.split(" "))).toList(), Emphasis.NONE);
    }

    private static ScriptLine line(int number, int paragraph, int sourceLine, String text) {
        List<ScriptWord> words =
                Arrays.stream(text.trim().split("\\s+")).map(Scripts::word).toList();
        return new ScriptLine(number, words, paragraph, sourceLine);
    }

    private static String plain(String written) {
        String plain = written.toLowerCase(Locale.ROOT).replace('\u2019', '\'').replaceAll("[^\\p{L}\\p{N}']", "");
        return plain.isEmpty() ? written : plain;
    }

    private static String letters(int number) {
        String last = String.valueOf((char) ('a' + number % 26));
        return number < 26 ? last : letters(number / 26) + last;
    }
}
