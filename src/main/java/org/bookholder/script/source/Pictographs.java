package org.bookholder.script.source;

import com.ibm.icu.lang.UCharacter;
import com.ibm.icu.lang.UProperty;

/** Finds emoji and other pictographs (Unicode Technical Standard #51), which nobody says and few fonts have. */
final class Pictographs {
    /** Signs before it, such as those for trade marks and arrows, belong to ordinary text. */
    private static final int FIRST = 0x2300;

    private static final int JOINER = 0x200d;
    private static final int EMOJI_STYLE = 0xfe0f;
    private static final int KEYCAP = 0x20e3;

    private Pictographs() {}

    /** Index after the pictograph at {@code start}, with its joined parts; {@code start} if there is none. */
    static int endAt(String text, int start) {
        int at = start;
        while (at < text.length()) {
            int c = text.codePointAt(at);
            if (!isPictograph(c) && !(at > start && joins(c)) && !isMark(c)) {
                return at;
            }
            at += Character.charCount(c);
        }
        return at;
    }

    private static boolean isPictograph(int c) {
        return c >= FIRST
                && (UCharacter.hasBinaryProperty(c, UProperty.EXTENDED_PICTOGRAPHIC)
                        || UCharacter.hasBinaryProperty(c, UProperty.REGIONAL_INDICATOR)
                        || UCharacter.hasBinaryProperty(c, UProperty.EMOJI_MODIFIER));
    }

    private static boolean joins(int c) {
        return c == JOINER || (c >= 0xe0020 && c <= 0xe007f);
    }

    /** What only changes how the character before it looks. */
    private static boolean isMark(int c) {
        return c == EMOJI_STYLE || c == KEYCAP;
    }
}
