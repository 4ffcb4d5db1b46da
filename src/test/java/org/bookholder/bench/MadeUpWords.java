package org.bookholder.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.bookholder.script.pronounce.Vocabulary;

/** Replaces every tenth word by a made-up word, like names and products that no recogniser knows. */
final class MadeUpWords {
    private static final int EVERY = 10;
    private static final List<String> ONSETS =
            List.of("b", "br", "d", "f", "fl", "g", "k", "kl", "l", "m", "n", "p", "r", "st", "t", "v", "w", "z");
    private static final List<String> VOWELS = List.of("a", "e", "i", "o", "u", "ay", "ee", "oo");
    private static final List<String> CODAS = List.of("n", "l", "k", "rd", "sk", "m", "x", "nt");

    private final Vocabulary vocabulary;
    private final Random random;
    private int seen;

    MadeUpWords(Vocabulary vocabulary, Random random) {
        this.vocabulary = vocabulary;
        this.random = random;
    }

    /** The text with every tenth word, counted on from the texts before, made up; marks beside a word stay. */
    String in(String text) {
        List<String> words = new ArrayList<>(Arrays.asList(text.split(" ", -1)));
        words.replaceAll(word -> ++seen % EVERY == 0 ? word.replaceAll("[A-Za-z0-9'’-]+", another()) : word);
        return String.join(" ", words);
    }

    private String another() {
        while (true) {
            String word = pick(ONSETS) + pick(VOWELS) + pick(ONSETS) + pick(VOWELS) + pick(CODAS);
            if (!vocabulary.contains(word)) {
                return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
            }
        }
    }

    private String pick(List<String> from) {
        return from.get(random.nextInt(from.size()));
    }
}
