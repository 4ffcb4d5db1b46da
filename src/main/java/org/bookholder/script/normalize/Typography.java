package org.bookholder.script.normalize;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Reduces the typographic variants of a character to one, so that the rules only need to know that one. The minus sign (U+2212) stays:
 * between numbers it is never "to".
 */
public final class Typography {
    /** The marks of Latin letters; those of other writing systems are parts of their words. */
    private static final Pattern MARKS = Pattern.compile("[\\u0300-\\u036f]");

    private Typography() {}

    /** The text with straight quotes, plain spaces, hyphens and digits; every character keeps its index. */
    public static String plain(String text) {
        char[] plain = text.toCharArray();
        for (int i = 0; i < plain.length; i++) {
            if (plain[i] > 0x7e) {
                plain[i] = plain(plain[i]);
            }
        }
        return new String(plain);
    }

    private static char plain(char c) {
        return switch (c) {
            case '\u2018', '\u2019', '\u201a', '\u201b', '\u2032', '\u00b4', '\u02bc' -> '\'';
            case '\u201c', '\u201d', '\u201e', '\u201f', '\u2033', '\u00ab', '\u00bb' -> '"';
            case '\u2010', '\u2011', '\u2012', '\u00ad' -> '-';
            case '\u2015' -> '\u2014';
            case '\u2044', '\u2215' -> '/';
            case '\u2126' -> '\u03a9';
            case '\u212a' -> 'K';
            default -> {
                int digit = c >= '\u2080' && c <= '\u2089'
                        ? c - '\u2080'
                        : Character.isDigit(c) ? Character.digit(c, 10) : -1;
                yield digit >= 0 ? (char) ('0' + digit) : isSpace(c) ? ' ' : c;
            }
        };
    }

    /** Whether {@code c} separates words; includes no-break spaces, which Java's own test leaves out. */
    public static boolean isSpace(char c) {
        return c <= ' ' || Character.isWhitespace(c) || Character.isSpaceChar(c) || c == '\u200b' || c == '\ufeff';
    }

    /** Letters in lower case and in composed form; compatibility forms such as ligatures become plain letters. */
    public static String lower(String letters) {
        if (isAscii(letters)) {
            return letters.toLowerCase(Locale.ROOT);
        }
        return Normalizer.normalize(
                Normalizer.normalize(letters, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT), Normalizer.Form.NFC);
    }

    /** A run of letters and apostrophes as spoken words: lower case, and nothing but letters, marks and apostrophes. */
    static String word(String letters) {
        String lower = lower(letters);
        for (int i = 0; i < lower.length(); i++) {
            char c = lower.charAt(i);
            if (c > 0x7e && !Character.isLetter(c) && !Character.isSurrogate(c)) {
                return lower.replaceAll("[^\\p{L}\\p{M}' ]", "")
                        .replaceAll("(?<![\\p{L}\\p{M}'])[\\p{M}']+(?![\\p{L}\\p{M}])", "");
            }
        }
        return lower;
    }

    /** Latin letters without their marks: "café" to "cafe". */
    public static String withoutMarks(String lower) {
        if (isAscii(lower)) {
            return lower;
        }
        String bare = MARKS.matcher(Normalizer.normalize(lower, Normalizer.Form.NFD))
                .replaceAll("")
                .replace("ß", "ss")
                .replace("æ", "ae")
                .replace("œ", "oe")
                .replace("ø", "o")
                .replace("ł", "l")
                .replace("đ", "d")
                .replace("ı", "i");
        return Normalizer.normalize(bare, Normalizer.Form.NFC);
    }

    private static boolean isAscii(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) > 0x7e) {
                return false;
            }
        }
        return true;
    }
}
