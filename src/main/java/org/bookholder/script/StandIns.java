package org.bookholder.script;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Finds known words that together are spelled, and so sound about, like a word that the recogniser does not know. */
final class StandIns {
    private static final int SHORTEST_PART = 2;
    private static final int MOST_PARTS = 4;

    private final Vocabulary vocabulary;

    StandIns(Vocabulary vocabulary) {
        this.vocabulary = vocabulary;
    }

    /** Known words that stand in for {@code word}; empty if none are found. */
    List<String> of(String word) {
        String letters = word.replace("'s", "").replace("'", "");
        return split(letters, MOST_PARTS).orElseGet(List::of);
    }

    /** The split into the fewest known parts, the longest part first where there is a choice. */
    private Optional<List<String>> split(String letters, int parts) {
        if (vocabulary.contains(letters)) {
            return Optional.of(List.of(letters));
        }
        if (parts == 1) {
            return Optional.empty();
        }
        return IntStream.rangeClosed(SHORTEST_PART, letters.length() - SHORTEST_PART)
                .mapToObj(at -> letters.substring(0, letters.length() - at))
                .filter(vocabulary::contains)
                .flatMap(first -> split(letters.substring(first.length()), parts - 1).stream()
                        .map(rest ->
                                Stream.concat(Stream.of(first), rest.stream()).toList()))
                .min(Comparator.comparingInt(List::size));
    }
}
