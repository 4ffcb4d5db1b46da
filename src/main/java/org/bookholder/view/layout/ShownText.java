package org.bookholder.view.layout;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A word as it is shown: with typographic quotes, and with the mark of a following pause kept separate.
 *
 * @param text the word
 * @param pause mark of a pause after it, empty if there is none
 */
record ShownText(String text, String pause) {
    private static final Pattern PAUSE = Pattern.compile("(?<word>.*?)\\s*(?<mark>\\.{3,}|…|[—–]|(?<=\\s)-{1,3})");
    private static final String MARK_ENDS = ".…—–-";
    private static final String OPENING = "([{“‘\"'—–-/";

    /** Prepares a written word; in English, straight quotes become curly ones. */
    static ShownText of(String written, boolean english) {
        if (written.isEmpty() || MARK_ENDS.indexOf(written.charAt(written.length() - 1)) < 0) {
            return new ShownText(english ? quoted(written) : written, "");
        }
        Matcher pause = PAUSE.matcher(written);
        boolean pauses = pause.matches() && !pause.group("word").isEmpty();
        String word = pauses ? pause.group("word") : written;
        String mark = !pauses ? "" : pause.group("mark").matches("[.…]+") ? "…" : "—";
        return new ShownText(english ? quoted(word) : word, mark);
    }

    /** After a digit, a straight quote may mean feet or inches and is left as it is. */
    private static String quoted(String word) {
        if (word.indexOf('\'') < 0 && word.indexOf('"') < 0) {
            return word;
        }
        StringBuilder turned = new StringBuilder(word);
        for (int i = 0; i < word.length(); i++) {
            char quote = word.charAt(i);
            boolean straight = quote == '\'' || quote == '"';
            boolean opens = i == 0 || OPENING.indexOf(word.charAt(i - 1)) >= 0;
            if (straight && (opens || !Character.isDigit(word.charAt(i - 1)))) {
                turned.setCharAt(i, quote == '"' ? opens ? '“' : '”' : opens && !elides(word, i) ? '‘' : '’');
            }
        }
        return turned.toString();
    }

    /** Whether the quote at {@code index} is an apostrophe for omitted letters, as in 'em and '90s. */
    private static boolean elides(String word, int index) {
        String rest = word.substring(index + 1);
        return rest.matches("(?i)(\\d.*|(em|tis|twas|til|cause|bout|n)\\b.*)");
    }
}
