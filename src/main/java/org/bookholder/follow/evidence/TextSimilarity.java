package org.bookholder.follow.evidence;

/** How similar two pieces of text are when written without spaces. */
public final class TextSimilarity {
    /** Edits, as a share of the longer word, up to which two words count as the same word heard differently. */
    private static final double SAME = 0.4;

    private TextSimilarity() {}

    /** Whether two words are the same except for a few letters. */
    public static boolean same(String a, String b) {
        return distance(a, b) <= SAME * Math.max(a.length(), b.length());
    }

    /**
     * The Levenshtein distance as a share of the longer word: 0 if they are equal, 1 if they have nothing in common.
     */
    public static double share(String a, String b) {
        int longer = Math.max(a.length(), b.length());
        return longer == 0 ? 0 : (double) distance(a, b) / longer;
    }

    /** The Levenshtein distance. */
    static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int above = row[j];
                int replaced = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(replaced, Math.min(above, row[j - 1]) + 1);
                diagonal = above;
            }
        }
        return row[b.length()];
    }
}
