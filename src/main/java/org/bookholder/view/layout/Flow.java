package org.bookholder.view.layout;

/** Direction of a text. */
public final class Flow {
    private Flow() {}

    /** Whether a text runs from right to left, by its first letter (Unicode Standard Annex 9, rules P2 and P3). */
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
