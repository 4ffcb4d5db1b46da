package org.bookholder.pace;

import java.util.List;
import java.util.regex.Pattern;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;

/**
 * How long words take beside other words of the same reader, in letters as they are spoken: long words and numbers take longer than short
 * words, and punctuation asks for a pause. The weights are rounded from those that fit recorded readers best, each time without the one
 * that was foretold (decision 0318).
 */
final class ReadingWeights {
    private static final double WORD = 1.4;
    private static final double COMMA = 3;
    private static final double SENTENCE = 9;
    private static final double PARAGRAPH = 20;

    private static final Pattern COMMA_AFTER = Pattern.compile(".*[,;:\\u2013\\u2014)][\"'\\u201d\\u2019)]*");
    private static final Pattern SENTENCE_AFTER = Pattern.compile(".*[.!?\\u2026][\"'\\u201d\\u2019)\\]]*");

    private ReadingWeights() {}

    /** The letters of a word as it is spoken, and what each of its spoken words adds. */
    static double spoken(ScriptWord word) {
        return word.spoken().get(0).stream()
                .mapToDouble(spoken -> spoken.length() + WORD)
                .sum();
    }

    /**
     * The pause after a word; none after the last.
     *
     * @param lines the script's lines
     * @param line the line, from 0
     * @param word the word in it, from 0
     */
    static double pause(List<ScriptLine> lines, int line, int word) {
        List<ScriptWord> words = lines.get(line).words();
        boolean last = word + 1 == words.size();
        if (last && line + 1 == lines.size()) {
            return 0;
        }
        if (last && lines.get(line + 1).paragraph() != lines.get(line).paragraph()) {
            return PARAGRAPH;
        }
        String written = words.get(word).written();
        if (SENTENCE_AFTER.matcher(written).matches()) {
            return SENTENCE;
        }
        return COMMA_AFTER.matcher(written).matches() ? COMMA : 0;
    }
}
