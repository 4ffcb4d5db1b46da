package org.bookholder.script;

import java.util.Locale;

/** How words sound, by the spelling rules that stand-ins are found with: close for English, and never exact. */
public final class Sounding {
    private Sounding() {}

    /** Syllables of a spoken word, 1 or more. */
    public static int syllables(String spoken) {
        long vowels = Phones.of(spoken.toLowerCase(Locale.ROOT))
                .chars()
                .filter(phone -> Phones.isVowel((char) phone))
                .count();
        return Math.max(1, (int) vowels);
    }

    /**
     * The consonants with which a spoken word begins, one character for each; empty if it begins with a vowel. S, T, C, J
     * and Z stand for the sounds of shoe, thin, chin, jam and measure.
     */
    public static String onset(String spoken) {
        String phones = Phones.of(spoken.toLowerCase(Locale.ROOT));
        int end = 0;
        while (end < phones.length() && !Phones.isVowel(phones.charAt(end))) {
            end++;
        }
        return phones.substring(0, end);
    }
}
