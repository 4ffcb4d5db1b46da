package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.script.model.ScriptSettings.LineBreaks;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.normalize.Latex;

/** Divides a source line into its sentences, each with its words. Not thread-safe. */
final class LineSentences {
    private final LineBreaks lineBreaks;
    private final SentenceSplitter sentences;
    private final WordSplitter splitter;

    LineSentences(ScriptSettings settings, WordSplitter splitter) {
        this.lineBreaks = settings.lineBreaks();
        this.sentences = new SentenceSplitter(settings.language());
        this.splitter = splitter;
    }

    /**
     * A sentence.
     *
     * @param words its words
     * @param end index after its last character that is no space
     */
    record Sentence(List<ScriptWord> words, int end) {}

    /** The sentences of a line in which there is something to say, in order. */
    List<Sentence> in(MarkedSourceLine text) {
        List<Integer> ends =
                lineBreaks == LineBreaks.AS_WRITTEN ? List.of(text.text().length()) : sentences.ends(text);
        List<Sentence> found = new ArrayList<>();
        int start = 0;
        int lastStart = 0;
        for (int end : ends) {
            int last = text.text().substring(0, end).stripTrailing().length();
            List<ScriptWord> words = splitter.split(text, start, end);
            if (!words.isEmpty()) {
                found.add(new Sentence(words, last));
                lastStart = start;
                start = end;
            } else if (!found.isEmpty()) {
                // characters after the last sentence belong to it
                found.set(found.size() - 1, new Sentence(splitter.split(text, lastStart, end), last));
                start = end;
            }
        }
        return found;
    }

    /** The formulae of a line that have no spoken form, by rule or by their author. */
    List<String> unsaidFormulae(MarkedSourceLine line) {
        String text = line.text();
        List<String> unsaid = new ArrayList<>();
        for (int at = text.indexOf('$'); at >= 0; at = text.indexOf('$', at + 1)) {
            int end = Latex.end(text, at);
            if (end > 0) {
                String formula = text.substring(at, end);
                if (line.said(at, end) == null && !line.isInsideSaid(at) && !splitter.says(formula)) {
                    unsaid.add(formula);
                }
                at = end - 1;
            }
        }
        return unsaid;
    }
}
