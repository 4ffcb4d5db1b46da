package org.bookholder.script;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.bookholder.script.PreparedScript.PreparedWord;

/** Finds what a reader may say for contractions and full forms that are to be read as written. */
final class Rivals {
    private final Vocabulary vocabulary;

    Rivals(Vocabulary vocabulary) {
        this.vocabulary = vocabulary;
    }

    /** The rivals in these lines, each with the words beside it, as far as the recogniser knows them. */
    List<List<String>> in(List<List<PreparedWord>> lines) {
        Set<List<String>> rivals = new LinkedHashSet<>();
        lines.forEach(line -> find(line, rivals));
        return List.copyOf(rivals);
    }

    private void find(List<PreparedWord> line, Set<List<String>> rivals) {
        for (int word = 0; word < line.size(); word++) {
            String said = said(line, word);
            for (List<String> other : Contractions.others(said)) {
                add(rivals, said(line, word - 1), other, said(line, word + 1));
            }
            for (String contraction : Contractions.contracted(said, said(line, word + 1))) {
                add(rivals, said(line, word - 1), List.of(contraction), said(line, word + 2));
            }
        }
    }

    private void add(Set<List<String>> rivals, String before, List<String> rival, String after) {
        if (!rival.stream().allMatch(vocabulary::contains)) {
            return;
        }
        List<String> phrase = new ArrayList<>();
        for (String part : List.of(before, String.join(" ", rival), after)) {
            if (!part.isEmpty()) {
                phrase.addAll(List.of(part.split(" ", -1)));
            }
        }
        rivals.add(List.copyOf(phrase));
    }

    /** What is listened for first for a word of a line; empty beyond its ends and where nothing is. */
    private static String said(List<PreparedWord> line, int word) {
        if (word < 0 || word >= line.size() || line.get(word).forms().isEmpty()) {
            return "";
        }
        return String.join(" ", line.get(word).forms().get(0));
    }
}
