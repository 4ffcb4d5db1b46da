package org.bookholder.view.layout;

/** Which way a text runs. */
public final class Flow {
    private Flow() {}

    /** Whether a text is set from right to left: its first letter decides (Unicode Standard Annex 9, rules P2 and P3). */
    public static boolean rightToLeft(String text) {
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            byte kind = Character.getDirectionality(text.codePointAt(i));
            if (kind == Character.DIRECTIONALITY_LEFT_TO_RIGHT) {
                return false;
            }
            if (kind == Character.DIRECTIONALITY_RIGHT_TO_LEFT
                    || kind == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC) {
                return true;
            }
        }
        return false;
    }
}
