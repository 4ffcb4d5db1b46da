package org.bookholder.script.pronounce;

import org.bookholder.script.normalize.Typography;

/**
 * How similar words sound, by our own English spelling rules, and by letters in other alphabets: a measure for comparing heard
 * words, not for synthesising speech.
 */
public final class SoundAlike {
    private SoundAlike() {}

    /**
     * How different two words or phrases sound: 0 for the same sounds, about 1 for nothing in common.
     *
     * @param a lower-case letters, apostrophes and spaces
     * @param b likewise
     */
    public static double distance(String a, String b) {
        String first = phones(a);
        String second = phones(b);
        int longer = Math.max(first.length(), second.length());
        return longer == 0 ? 0 : Math.min(1, PhoneDistance.between(first, second) / longer);
    }

    private static String phones(String phrase) {
        StringBuilder phones = new StringBuilder();
        for (String word : phrase.split(" ", -1)) {
            String letters = Typography.withoutMarks(word);
            String sounds = Phones.of(letters);
            // The rules are English; in other alphabets each letter counts as a sound of its own.
            phones.append(sounds.isEmpty() ? letters : sounds);
        }
        return phones.toString();
    }
}
