package org.bookholder.script.pronounce;

import java.util.Locale;
import java.util.regex.Pattern;

/** How words sound, by the same spelling rules that find stand-ins: close for English, but never exact. */
public final class Sounding {
    /**
     * Spellings in which the rules find one vowel too few: handles, settled, changes, idea, poem, rhythm, being,
     * hundred, measure, going, isn't, client, eightieth.
     */
    private static final Pattern ONE_MORE = Pattern.compile(
            "[bcdfgkpstz]l(?:es|ed)$|ges$|^area|dea$|poe[mt]|thms?$|[^aeiou]eing$|quiet|[rl]ier$|ndred$|[ao]sure$|^[dg]oing|[sd]n't$|client|tieth");

    /** Spellings in which they find one too many: something, everyone, buy, Australian, million, eye, guess, queue, business, chocolate, wednesday, values, baseline, beforehand. */
    private static final Pattern ONE_LESS = Pattern.compile(
            "^some(?=[bdhotw])|^every(?=[bdotw])|^else(?=w)|uy|li[ao]n|nion|^eyes?$|^gue(?:ss|st)|ngue$|^queue|nine(?=t)|guage|getable|eople|^busin|^chocol|^wednes|[lc]ues$|^cues|^(?:base|time|life|home)(?=l|m)|(?:^|be)fore(?=[bcghst])|[rl]aged$");

    /** Spellings after which the s of a possessive is a syllable of its own, as in the bus's. */
    private static final Pattern HISSING = Pattern.compile("(?:s|x|z|ch|sh|ce|ge|se|ze)$");

    private Sounding() {}

    /** Number of syllables of a spoken word, 1 or more. */
    public static int syllables(String spoken) {
        String word = spoken.toLowerCase(Locale.ROOT);
        if (word.endsWith("'s")) {
            String owner = word.substring(0, word.length() - 2);
            return owner.isEmpty()
                    ? 1
                    : syllables(owner) + (HISSING.matcher(owner).find() ? 1 : 0);
        }
        long vowels = Phones.of(word)
                .chars()
                .filter(phone -> Phones.isVowel((char) phone))
                .count();
        int more = ONE_MORE.matcher(word).find() ? 1 : 0;
        int less = ONE_LESS.matcher(word).find() ? 1 : 0;
        return Math.max(1, (int) vowels + more - less);
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
