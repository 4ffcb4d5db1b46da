package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The marks of comments and notes in a file, such as "[a]" and "[12]": what word processors write behind a word when they
 * export a text. An index is written alike, "f[0]", so that the file as a whole tells them apart: marks count from "a" or
 * "1", each once, or the text that belongs to them stands on a line of its own behind them. A list whose items begin with
 * "[x]" or "[a]" has no marks.
 */
final class NoteMarks {
    private static final Pattern JOINED =
            Pattern.compile("(?<=[\\p{L}\\p{N}])(?<!\\[)\\[([a-z]|\\d{1,3})\\](?![\\[\\p{L}\\p{N}])");
    private static final String MARK = "([a-z]{1,2}|[1-9]\\d{0,2})";
    private static final Pattern OWN_TEXT =
            Pattern.compile("(?m)^[ \\t>*-]{0,8}\\[" + MARK + "\\](?!\\()[: \\t]?(?=\\S)");

    /** A mark at its word; that of a source, a number, may have a space before it. */
    private static final Pattern USE =
            Pattern.compile("(?<=[^\\s\\[(])\\[" + MARK + "\\]|(?<=[^\\s\\[(>*-]) \\[([1-9]\\d{0,2})\\]");

    private final Set<String> listed = new HashSet<>();
    private final Set<String> counted = new HashSet<>();

    private NoteMarks() {}

    /** The marks in a file's text. */
    static NoteMarks in(String text) {
        NoteMarks marks = new NoteMarks();
        if (text.indexOf('[') < 0) {
            return marks;
        }
        marks.list(text);
        List<String> joined = new ArrayList<>();
        Matcher found = JOINED.matcher(text);
        while (found.find()) {
            joined.add(found.group(1));
        }
        marks.count(joined, 'a');
        marks.count(joined, '1');
        return marks;
    }

    /** Takes as marks those that stand at a word before each line that begins with them. */
    private void list(String text) {
        Set<String> used = new HashSet<>();
        Set<String> others = new HashSet<>();
        Matcher use = USE.matcher(text);
        boolean more = use.find();
        Matcher own = OWN_TEXT.matcher(text);
        while (own.find()) {
            for (; more && use.start() < own.start(); more = use.find()) {
                used.add(use.group(1) == null ? use.group(2) : use.group(1));
            }
            (used.remove(own.group(1)) ? listed : others).add(own.group(1));
        }
        listed.removeAll(others);
    }

    /** Takes the marks of one kind as such if they count up from the first, one number alone may as well be an index. */
    private void count(List<String> joined, char first) {
        boolean letters = first == 'a';
        List<String> kind = joined.stream()
                .filter(mark -> Character.isLetter(mark.charAt(0)) == letters)
                .toList();
        for (int i = 0; i < kind.size(); i++) {
            if (!kind.get(i).equals(letters ? String.valueOf((char) (first + i)) : String.valueOf(i + 1))) {
                return;
            }
        }
        if (letters || kind.size() > 1) {
            counted.addAll(kind);
        }
    }

    /** Whether what stands in brackets joined to a word is a mark. */
    boolean joined(String inside) {
        return counted.contains(inside) || listed.contains(inside);
    }

    /** Whether a line is the text that belongs to a mark. */
    boolean isOwnText(String line) {
        Matcher own = OWN_TEXT.matcher(line);
        return own.lookingAt() && listed.contains(own.group(1));
    }

    /** Whether the text that belongs to this mark stands on a line of its own. */
    boolean listed(String inside) {
        return listed.contains(inside);
    }
}
