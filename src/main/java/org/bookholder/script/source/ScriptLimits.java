package org.bookholder.script.source;

import org.bookholder.problem.ProblemException;
import org.bookholder.script.normalize.Typography;

/**
 * How large a script and its parts may be. Each limit lies far above what anyone reads to a camera. Beyond it, reading the
 * script, laying it out and printing its pickups could take minutes, or all memory.
 */
final class ScriptLimits {
    /** About a hundred thousand words. */
    static final int MOST_CHARACTERS = 600_000;

    /** Ten hours at 100 words per minute. */
    static final int MOST_WORDS = 60_000;

    /** A line of the file, which may be a whole paragraph or more: an hour and a half of reading. */
    static final int LONGEST_LINE = 50_000;

    /** Between two spaces: longer than the address of a web page. */
    static final int LONGEST_WORD = 500;

    /** A title stands in file names, at the head of pages and in the window. */
    static final int LONGEST_TITLE = 300;

    /** How deep quotes, lists and emphasis may be nested. */
    static final int DEEPEST = 50;

    /** Ideographs and what is written among them need no spaces. */
    private static final int FIRST_WITHOUT_SPACES = 0x2e80;

    private ScriptLimits() {}

    /** Refuses a text that is too long, or has a line that is. */
    static void check(String text, String source) throws ProblemException {
        if (text.length() > MOST_CHARACTERS) {
            throw new ProblemException(
                    "the script is too long (over 600,000 characters)", source, "split it into lessons");
        }
        int line = 1;
        int start = 0;
        for (int at = text.indexOf('\n'); start <= text.length(); at = text.indexOf('\n', start)) {
            int end = at < 0 ? text.length() : at;
            if (end - start > LONGEST_LINE) {
                throw new ProblemException(
                        "this line is too long (over 50,000 characters)",
                        source + ":" + line,
                        "write each paragraph on a line of its own");
            }
            start = end + 1;
            line++;
        }
    }

    /** Whether more than {@value #LONGEST_WORD} characters follow each other without a space. */
    static boolean hasEndlessWord(String text) {
        int length = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            length = Typography.isSpace(c) || c >= FIRST_WITHOUT_SPACES ? 0 : length + 1;
            if (length > LONGEST_WORD) {
                return true;
            }
        }
        return false;
    }
}
