package org.bookholder.script.normalize;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Finds by rule which words an English contraction stands for: a negated auxiliary ("don't"), or a pronoun or similar
 * word with a verb ("it's", "they'll"). Possessives ("the wheel's") are not contractions. Words are in lower case with
 * a plain apostrophe.
 */
public final class Contractions {
    private static final List<String> NEGATED = List.of(
            "do", "does", "did", "have", "has", "had", "is", "are", "was", "were", "could", "would", "should", "might",
            "must", "need");
    private static final List<String> PRONOUNS = List.of("i", "you", "he", "she", "it", "we", "they");
    private static final List<String> POINTERS =
            List.of("that", "there", "here", "who", "what", "where", "when", "how");
    private static final List<String> MODALS = List.of("could", "would", "should", "might", "must");

    private static final Contractions ENGLISH = new Contractions();

    private final Map<String, Set<List<String>>> others;
    private final Map<List<String>, Set<String>> contracted;

    private Contractions() {
        Table table = new Table();
        fill(table);
        others = Map.copyOf(table.others);
        contracted = Map.copyOf(table.contracted);
    }

    private static void fill(Table table) {
        NEGATED.forEach(verb -> table.add(verb + "n't", verb, "not"));
        table.add("can't", "can", "not");
        table.another("can't", "cannot");
        table.another("cannot", "can't");
        table.another("cannot", "can", "not");
        table.add("won't", "will", "not");
        table.add("shan't", "shall", "not");
        table.add("i'm", "i", "am");
        table.add("let's", "let", "us");
        for (String pronoun : List.of("you", "we", "they", "who", "what", "there")) {
            table.add(pronoun + "'re", pronoun, "are");
        }
        for (String subject : joined(PRONOUNS, POINTERS)) {
            table.add(subject + "'ll", subject, "will");
            table.add(subject + "'d", subject, "would");
            table.add(subject + "'d", subject, "had");
        }
        for (String subject : PRONOUNS) {
            table.another(subject + "'d've", subject, "would", "have");
            table.another(subject + "'d've", subject + "'d", "have");
            table.another(subject + "'d've", subject, "would've");
        }
        for (String subject : joined(List.of("he", "she", "it"), POINTERS)) {
            table.add(subject + "'s", subject, "is");
            table.add(subject + "'s", subject, "has");
        }
        for (String subject : joined(List.of("i", "you", "we", "they", "who"), MODALS)) {
            table.add(subject + "'ve", subject, "have");
        }
    }

    private static List<String> joined(List<String> some, List<String> others) {
        List<String> all = new ArrayList<>(some);
        all.addAll(others);
        return all;
    }

    /**
     * What may be said instead of a written word, in full or contracted, most likely first: for "it's" both "it is" and
     * "it has".
     */
    public static Set<List<String>> others(String word) {
        return ENGLISH.others.getOrDefault(word, Set.of());
    }

    /** The contractions that may stand for two consecutive words; none if these are never contracted. */
    public static Set<String> contracted(String first, String second) {
        return ENGLISH.contracted.getOrDefault(List.of(first, second), Set.of());
    }

    /** Holds the two look-up tables while they are being filled. */
    private static final class Table {
        private final Map<String, Set<List<String>>> others = new HashMap<>();
        private final Map<List<String>, Set<String>> contracted = new HashMap<>();

        void add(String contraction, String first, String second) {
            another(contraction, first, second);
            contracted
                    .computeIfAbsent(List.of(first, second), f -> new LinkedHashSet<>())
                    .add(contraction);
        }

        void another(String word, String... said) {
            others.computeIfAbsent(word, w -> new LinkedHashSet<>()).add(List.of(said));
        }
    }
}
