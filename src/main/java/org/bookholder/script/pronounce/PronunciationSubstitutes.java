package org.bookholder.script.pronounce;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.bookholder.script.normalize.Typography;
import org.jspecify.annotations.Nullable;

/**
 * Finds known words that sound like an unknown one: another spelling of it, the known words that it is made of
 * ("rooftop": roof top), or short words whose sounds add up to it. Not thread-safe.
 */
final class PronunciationSubstitutes {
    private static final int MOST_WORDS = 4;
    private static final int MOST_FORMS = 3;
    private static final int LONGEST_PHONES = 24;

    /** The cost of each further word, so that few long words are preferred to many short ones. */
    private static final double PER_WORD = 0.35;

    /** The greatest distance per phone of the word at which something still counts as similar. */
    private static final double LIKE = 0.4;

    private static final Set<String> ENDINGS =
            Set.of("ness", "less", "ment", "ship", "like", "wise", "able", "ing", "er", "est");

    private final Vocabulary vocabulary;
    private final Map<String, List<List<String>>> found = new HashMap<>();
    private @Nullable Map<String, String> syllables;

    PronunciationSubstitutes(Vocabulary vocabulary) {
        this.vocabulary = vocabulary;
    }

    /** Word sequences that sound like {@code word}, most similar first; empty if there are none. */
    List<List<String>> of(String word) {
        List<List<String>> forms = found.get(word);
        if (forms == null) {
            forms = find(word);
            found.put(word, forms);
        }
        return forms;
    }

    private List<List<String>> find(String word) {
        String phones = Phones.of(Typography.withoutMarks(word));
        if (phones.isEmpty() || phones.length() > LONGEST_PHONES) {
            return List.of();
        }
        Map<List<String>, Double> costs = new LinkedHashMap<>();
        if (word.endsWith("'s") && vocabulary.contains(word.substring(0, word.length() - 2))) {
            add(costs, List.of(word.substring(0, word.length() - 2)), PER_WORD);
        }
        for (String spelling : Respellings.of(word)) {
            if (vocabulary.contains(spelling)) {
                add(costs, List.of(spelling), PhoneDistance.between(Phones.of(spelling), phones));
            }
        }
        for (List<String> parts : splits(word)) {
            StringBuilder sound = new StringBuilder();
            parts.forEach(part -> sound.append(Phones.of(part)));
            // the spelling shows what the word is made of better than our rules for sounds do
            add(costs, parts, PhoneDistance.between(sound.toString(), phones) / 2 + PER_WORD / 2);
        }
        composed(phones).forEach((form, cost) -> add(costs, form, cost));
        double limit = Math.max(1.2, LIKE * phones.length());
        return costs.entrySet().stream()
                .filter(entry -> entry.getValue() <= limit)
                .sorted(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .limit(MOST_FORMS)
                .toList();
    }

    private static void add(Map<List<String>, Double> costs, List<String> form, double cost) {
        costs.merge(form, cost, Math::min);
    }

    private List<List<String>> splits(String word) {
        List<List<String>> splits = new ArrayList<>();
        for (int i = 2; i <= word.length() - 2; i++) {
            String tail = word.substring(i);
            if (!vocabulary.contains(tail) || (tail.length() < 3 && !ENDINGS.contains(tail))) {
                continue;
            }
            String head = known(word.substring(0, i), ENDINGS.contains(tail));
            boolean syllables = head != null && hasVowel(head) && hasVowel(tail);
            if (head != null && syllables && (head.length() > 2 || tail.length() > 3)) {
                splits.add(List.of(head, tail));
            }
        }
        splits.sort(Comparator.comparingInt(
                parts -> -Math.min(parts.get(0).length(), parts.get(1).length())));
        return splits.size() > MOST_FORMS ? splits.subList(0, MOST_FORMS) : splits;
    }

    private static boolean hasVowel(String letters) {
        return letters.chars().anyMatch(c -> "aeiouy".indexOf(c) >= 0);
    }

    /** The known word that {@code head} is, or that it becomes before an ending: "shapeli-ness" gives "shapely". */
    private @Nullable String known(String head, boolean beforeEnding) {
        if (vocabulary.contains(head)) {
            return head;
        }
        if (beforeEnding) {
            String y = head.endsWith("i") ? head.substring(0, head.length() - 1) + "y" : head + "e";
            return vocabulary.contains(y) ? y : null;
        }
        return null;
    }

    private record Path(double cost, List<String> words) {}

    /** The cheapest ways to build the sounds from syllables. */
    private Map<List<String>, Double> composed(String phones) {
        if (syllables == null) {
            syllables = new TreeMap<>(Syllables.in(vocabulary));
        }
        int n = phones.length();
        @Nullable Path[][] best = new Path[n + 1][MOST_WORDS + 1];
        best[0][0] = new Path(0, List.of());
        for (int start = 0; start < n; start++) {
            if (isReached(best[start])) {
                extend(best, start, phones, syllables);
            }
        }
        Map<List<String>, Double> forms = new LinkedHashMap<>();
        for (Path path : best[n]) {
            if (path != null) {
                forms.put(path.words, path.cost);
            }
        }
        return forms;
    }

    private static boolean isReached(@Nullable Path[] paths) {
        for (int words = 0; words < MOST_WORDS; words++) {
            if (paths[words] != null) {
                return true;
            }
        }
        return false;
    }

    private static void extend(@Nullable Path[][] best, int start, String phones, Map<String, String> syllables) {
        int n = phones.length();
        double[] cheapest = new double[n - start + 1];
        String[] cheapestWord = new String[n - start + 1];
        Arrays.fill(cheapest, Double.MAX_VALUE);
        syllables.forEach((word, sound) -> {
            if (PhoneDistance.swap(sound.charAt(0), phones.charAt(start)) >= 1) {
                return;
            }
            double[] costs = PhoneDistance.toBeginnings(sound, phones, start);
            for (int length = 1; length < costs.length; length++) {
                if (costs[length] < cheapest[length]) {
                    cheapest[length] = costs[length];
                    cheapestWord[length] = word;
                }
            }
        });
        for (int words = 0; words < MOST_WORDS; words++) {
            Path before = best[start][words];
            for (int length = 1; before != null && length < cheapest.length; length++) {
                if (cheapest[length] == Double.MAX_VALUE) {
                    continue;
                }
                double cost = before.cost + cheapest[length] + PER_WORD + (length == 1 ? PER_WORD : 0);
                Path there = best[start + length][words + 1];
                if (there == null || cost < there.cost) {
                    List<String> path = new ArrayList<>(before.words);
                    path.add(cheapestWord[length]);
                    best[start + length][words + 1] = new Path(cost, List.copyOf(path));
                }
            }
        }
    }
}
