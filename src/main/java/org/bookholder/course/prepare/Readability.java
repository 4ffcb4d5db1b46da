package org.bookholder.course.prepare;

import java.util.List;
import java.util.regex.Pattern;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptSettings.LineBreaks;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.pronounce.Sounding;

/**
 * How easy a text is to read, by the formulas of Flesch (1948) and of Kincaid and others (1975), from three counts.
 *
 * @param words words as spoken, 1 or more
 * @param sentences 1 or more
 * @param syllables 1 or more
 */
public record Readability(int words, int sentences, int syllables) {
    private static final Pattern SENTENCE_END = Pattern.compile(".*[.!?:\\u2026][\"'\\u201d\\u2019)\\]]*");

    /** Checks the counts. */
    public Readability {
        if (words < 1 || sentences < 1 || syllables < 1) {
            throw new IllegalArgumentException("words (" + words + "), sentences (" + sentences + ") and syllables ("
                    + syllables + ") must be 1 or more");
        }
    }

    /** The readability of a script, as it is spoken. */
    public static Readability of(Script script) {
        int words = 0;
        int syllables = 0;
        int sentences = 0;
        List<ScriptLine> lines = script.lines();
        boolean asWritten = script.settings().lineBreaks() == LineBreaks.AS_WRITTEN;
        for (int i = 0; i < lines.size(); i++) {
            ScriptLine line = lines.get(i);
            for (int w = 0; w < line.words().size(); w++) {
                ScriptWord word = line.words().get(w);
                words += word.spoken().get(0).size();
                syllables += word.spoken().get(0).stream()
                        .mapToInt(Sounding::syllables)
                        .sum();
                boolean last = w == line.words().size() - 1;
                if (endsSentence(word) && (last || asWritten)) {
                    sentences++;
                } else if (last && endsParagraph(lines, i)) {
                    sentences++;
                }
            }
        }
        return new Readability(words, sentences, syllables);
    }

    private static boolean endsParagraph(List<ScriptLine> lines, int i) {
        return i + 1 == lines.size()
                || lines.get(i + 1).paragraph() != lines.get(i).paragraph();
    }

    private static boolean endsSentence(ScriptWord word) {
        return SENTENCE_END.matcher(word.written()).matches() && !word.plain().endsWith(".");
    }

    /** Flesch reading ease: 60 to 70 is standard writing, ages 13 to 15; 90 to 100 the end of primary school. */
    public double ease() {
        return 206.835 - 1.015 * words / sentences - 84.6 * syllables / words;
    }

    /** Flesch-Kincaid grade: years at a school in the USA. */
    public double grade() {
        return 0.39 * words / sentences + 11.8 * syllables / words - 15.59;
    }
}
