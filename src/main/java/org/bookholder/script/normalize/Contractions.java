package org.bookholder.script.normalize;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which English contractions stand for which words, by rule: a negated auxiliary ("don't"), or a pronoun or the like with
 * a verb ("it's", "they'll"). Possessives ("the wheel's") are none. Words are in lower case with a plain apostrophe.
 */
public final class Contractions {
    private static final List<String> NEGATED = List.of(
            "do", "does", "did", "have", "has", "had", "is", "are", "was", "were", "could", "would", "should", "might",
            "must", "need");
    private static final List<String> PRONOUNS = List.of("i", "you", "he", "she", "it", "we", "they");
    private static final List<String> POINTERS =
            List.of("that", "there", "here", "who", "what", "where", "when", "how");
    private static final List<String> MODALS = List.of("could", "would", "should", "might", "must");

    private static final Map<String, Set<List<String>>> OTHERS = new HashMap<>();
    private static final Map<List<String>, Set<String>> CONTRACTED = new HashMap<>();

    static {
        NEGATED.forEach(verb -> add(verb + "n't", verb, "not"));
        add("can't", "can", "not");
        another("can't", "cannot");
        another("cannot", "can't");
        another("cannot", "can", "not");
        add("won't", "will", "not");
        add("shan't", "shall", "not");
        add("i'm", "i", "am");
        add("let's", "let", "us");
        for (String pronoun : List.of("you", "we", "they", "who", "what", "there")) {
            add(pronoun + "'re", pronoun, "are");
        }
        for (String subject : joined(PRONOUNS, POINTERS)) {
            add(subject + "'ll", subject, "will");
            add(subject + "'d", subject, "would");
            add(subject + "'d", subject, "had");
        }
        for (String subject : joined(List.of("he", "she", "it"), POINTERS)) {
            add(subject + "'s", subject, "is");
            add(subject + "'s", subject, "has");
        }
        for (String subject : joined(List.of("i", "you", "we", "they", "who"), MODALS)) {
            add(subject + "'ve", subject, "have");
        }
    }

    private Contractions() {}

    private static List<String> joined(List<String> some, List<String> others) {
        List<String> all = new ArrayList<>(some);
        all.addAll(others);
        return all;
    }

    private static void add(String contraction, String first, String second) {
        another(contraction, first, second);
        CONTRACTED
                .computeIfAbsent(List.of(first, second), f -> new LinkedHashSet<>())
                .add(contraction);
    }

    private static void another(String word, String... said) {
        OTHERS.computeIfAbsent(word, w -> new LinkedHashSet<>()).add(List.of(said));
    }

    /** What may be said for a written word in full or contracted, the likeliest first: for "it's" both "it is" and "it has". */
    public static Set<List<String>> others(String word) {
        return OTHERS.getOrDefault(word, Set.of());
    }

    /** The contractions that may stand for two words one after the other; none if they are not contracted. */
    public static Set<String> contracted(String first, String second) {
        return CONTRACTED.getOrDefault(List.of(first, second), Set.of());
    }
}
