package org.bookholder.script.pronounce;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.normalize.Contractions;

/** Finds what a reader may wrongly say for contractions and full forms that must be read as written. */
final class AlternativeReadings {
    private final Vocabulary vocabulary;

    AlternativeReadings(Vocabulary vocabulary) {
        this.vocabulary = vocabulary;
    }

    /** The rivals in these lines, each with its neighbouring words, as far as the recogniser knows them. */
    List<List<String>> in(List<List<PreparedWord>> lines) {
        Set<List<String>> rivals = new LinkedHashSet<>();
        lines.forEach(line -> find(line, rivals));
        return List.copyOf(rivals);
    }

    private void find(List<PreparedWord> line, Set<List<String>> rivals) {
        for (int word = 0; word < line.size(); word++) {
            String said = String.join(" ", preferred(line, word));
            for (List<String> other : Contractions.others(said)) {
                add(rivals, preferred(line, word - 1), other, preferred(line, word + 1));
            }
            String next = String.join(" ", preferred(line, word + 1));
            for (String contraction : Contractions.contracted(said, next)) {
                add(rivals, preferred(line, word - 1), List.of(contraction), preferred(line, word + 2));
            }
        }
    }

    private void add(Set<List<String>> rivals, List<String> before, List<String> rival, List<String> after) {
        if (rival.stream().allMatch(vocabulary::contains)) {
            rivals.add(Stream.of(before, rival, after).flatMap(List::stream).toList());
        }
    }

    /** The preferred form that is listened for; empty beyond the ends of the line and for a word without forms. */
    private static List<String> preferred(List<PreparedWord> line, int word) {
        return word < 0 || word >= line.size() ? List.of() : line.get(word).preferred();
    }
}
