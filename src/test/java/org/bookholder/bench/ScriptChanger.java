package org.bookholder.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.TreeSet;

/**
 * Changes a written line so that it differs from what is said. Replacement words come from the same text, so that they
 * fit.
 */
final class ScriptChanger {
    private static final String CONTENT_WORD = "[A-Za-z]{4,}";
    private static final int LENGTH_DIFFERENCE = 3;

    private final List<String> vocabulary;
    private final Random random;

    ScriptChanger(List<Utterance> text, Random random) {
        TreeSet<String> words = new TreeSet<>();
        for (Utterance utterance : text) {
            for (String word : utterance.text().split(" ", -1)) {
                if (word.matches(CONTENT_WORD)) {
                    words.add(word.toLowerCase(Locale.ROOT));
                }
            }
        }
        vocabulary = List.copyOf(words);
        this.random = random;
    }

    /** Whether the line has a word that can be changed. */
    static boolean canChange(String line) {
        return !places(Arrays.asList(line.split(" ", -1))).isEmpty();
    }

    /** The line as it is to be written. */
    String changed(String line, Happening happening) {
        if (!happening.altersScript()) {
            return line;
        }
        List<String> words = new ArrayList<>(Arrays.asList(line.split(" ", -1)));
        List<Integer> places = places(words);
        if (places.isEmpty()) {
            throw new IllegalArgumentException("line ('" + line + "') must have a word that can be changed");
        }
        int place = places.get(random.nextInt(places.size()));
        switch (happening) {
            case SWAP -> words.set(place, another(words.get(place), words));
            case DROP -> words.add(place, another("", words));
            default -> words.remove(place);
        }
        return String.join(" ", words);
    }

    /** Where there are content words; neither the first word nor the last is one. */
    private static List<Integer> places(List<String> words) {
        List<Integer> places = new ArrayList<>();
        for (int i = 1; i < words.size() - 1; i++) {
            if (words.get(i).matches(CONTENT_WORD)) {
                places.add(i);
            }
        }
        return places;
    }

    /** A word of about the same length with another beginning that is not in the line; any word for an empty one. */
    private String another(String word, List<String> line) {
        List<String> fitting = vocabulary.stream()
                .filter(v -> word.isEmpty()
                        || (Math.abs(v.length() - word.length()) <= LENGTH_DIFFERENCE
                                && v.charAt(0) != Character.toLowerCase(word.charAt(0))))
                .filter(v -> line.stream().noneMatch(v::equalsIgnoreCase))
                .toList();
        return fitting.get(random.nextInt(fitting.size()));
    }
}
