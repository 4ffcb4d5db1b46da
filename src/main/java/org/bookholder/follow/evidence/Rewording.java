package org.bookholder.follow.evidence;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.normalize.Contractions;

/** Other ways to say the words of a line: in full instead of contracted, or the other way round. */
final class Rewording {
    /** For each word, what may be said instead of it, without spaces. */
    private final List<Set<String>> alone = new ArrayList<>();

    /** For each word except the last, what may be said instead of it and the next one together. */
    private final List<Set<String>> pairs = new ArrayList<>();

    Rewording(List<PreparedWord> words) {
        List<Set<String>> said = words.stream().map(Rewording::said).toList();
        for (int word = 0; word < words.size(); word++) {
            alone.add(said.get(word).stream()
                    .flatMap(form -> Contractions.others(form).stream())
                    .map(other -> String.join("", other))
                    .collect(Collectors.toSet()));
            if (word + 1 < words.size()) {
                pairs.add(contracted(said.get(word), said.get(word + 1)));
            }
        }
    }

    private static Set<String> said(PreparedWord word) {
        return word.word().spoken().stream().map(form -> String.join(" ", form)).collect(Collectors.toSet());
    }

    private static Set<String> contracted(Set<String> firsts, Set<String> seconds) {
        Set<String> contracted = new HashSet<>();
        firsts.forEach(first -> seconds.forEach(second -> contracted.addAll(Contractions.contracted(first, second))));
        return contracted;
    }

    /** Whether {@code heard}, without spaces, means the same as a word. */
    boolean ofWord(int word, String heard) {
        return alone.get(word).contains(heard);
    }

    /** Whether {@code heard} means the same as a word and the one after it. */
    boolean ofPair(int first, String heard) {
        return first >= 0 && first < pairs.size() && pairs.get(first).contains(heard);
    }
}
