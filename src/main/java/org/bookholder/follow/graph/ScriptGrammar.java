package org.bookholder.follow.graph;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.speech.Grammar;

/** Builds the phrases that the script ear should expect. */
public final class ScriptGrammar {
    private ScriptGrammar() {}

    /**
     * Makes one phrase for each line, with each word's preferred form; one for each further form, with the words beside
     * it; and one for each of the script's rivals.
     *
     * @return empty if the recogniser knows no word of the script
     */
    public static Optional<Grammar> of(PreparedScript script) {
        List<List<String>> phrases = new ArrayList<>();
        for (List<PreparedWord> line : script.lines()) {
            addPhrase(phrases, line.stream().map(PreparedWord::preferred).toList());
            for (int word = 0; word < line.size(); word++) {
                List<String> before = word > 0 ? line.get(word - 1).preferred() : List.of();
                List<String> after = word + 1 < line.size() ? line.get(word + 1).preferred() : List.of();
                for (List<String> form : line.get(word).forms().stream().skip(1).toList()) {
                    addPhrase(phrases, List.of(before, form, after));
                }
            }
        }
        phrases.addAll(script.rivals());
        return phrases.isEmpty() ? Optional.empty() : Optional.of(new Grammar(phrases));
    }

    private static void addPhrase(List<List<String>> phrases, List<List<String>> parts) {
        List<String> phrase = parts.stream().flatMap(List::stream).toList();
        if (!phrase.isEmpty()) {
            phrases.add(phrase);
        }
    }
}
