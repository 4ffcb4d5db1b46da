package org.bookholder.script.source;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Extracts the lines from plain text. Blank lines separate paragraphs; in a text without blank lines each line is a
 * paragraph, as word processors export it. Each item of a list is a paragraph of its own.
 */
final class PlainTextSource {
    private static final Pattern NUMBERED_TITLE =
            Pattern.compile("(?i)(?:lesson|chapter|part|module|episode|unit|video) \\d{1,3}\\b.*[^.!?]");

    /** A row of signs that separates, or underlines a title. */
    private static final Pattern RULE = Pattern.compile("(?:[-=_*~#+\u2013\u2014\u2022] ?){3,200}");

    private static final Pattern UNDERLINE = Pattern.compile("={3,200}|-{3,200}");

    /** What is spoken although a row of signs follows: that separates it from what comes. */
    private static final Pattern SENTENCE = Pattern.compile(".*[.!,;:]|.{81,}");

    private static final Pattern TITLE_SAID = Pattern.compile("(?i)title: *(?=\\S)");
    private static final int TITLE_WORDS = 10;

    private PlainTextSource() {}

    /** The first line if it is underlined, or if a blank line follows it and it is written like a title; else empty. */
    private static String title(String text) {
        List<String> rows =
                text.stripLeading().lines().limit(3).map(String::strip).toList();
        if (rows.size() < 2) {
            return "";
        }
        if (UNDERLINE.matcher(rows.get(1)).matches()
                && !RULE.matcher(rows.get(0)).matches()
                && !SENTENCE.matcher(rows.get(0)).matches()) {
            return rows.get(0);
        }
        String first = rows.get(0);
        boolean above = rows.get(1).isEmpty() || ProductionCues.isSheet(rows.get(1));
        if (above && TITLE_SAID.matcher(first).lookingAt()) {
            return first;
        }
        if (rows.size() < 3 || !rows.get(1).isEmpty()) {
            return "";
        }
        List<String> words = List.of(first.split("\\s+"));
        boolean plain = words.size() <= TITLE_WORDS && first.matches("[\\p{L}\\p{N}].*[\\p{L}\\p{N})]");
        long capitals = words.stream()
                .filter(w -> Character.isUpperCase(w.codePointAt(0)))
                .count();
        long small = words.stream()
                .filter(w -> w.length() <= 4 && w.equals(w.toLowerCase(Locale.ROOT)))
                .count();
        boolean capitalised = capitals > 1 && capitals + small == words.size();
        return plain && (capitalised || NUMBERED_TITLE.matcher(first).matches()) ? first : "";
    }

    /**
     * Reads {@code text} into {@code draft}.
     *
     * @param firstLine line of the file at which the text begins, from 1
     * @param titleWanted whether a first line that looks like a title should become it
     */
    static void read(String text, int firstLine, boolean titleWanted, ScriptBuilder draft) {
        boolean spaced = text.strip().lines().anyMatch(String::isBlank);
        String title = titleWanted ? title(text) : "";
        int number = firstLine;
        for (String row : text.split("\\R", -1)) {
            String line = row.strip();
            ListMark.@Nullable Found item = ListMark.at(line);
            if (!title.isEmpty() && line.equals(title)) {
                draft.heading(TITLE_SAID.matcher(title).replaceFirst(""), number++, true);
                title = "";
                continue;
            }
            if (RULE.matcher(line).matches()) {
                draft.paragraph();
                draft.leaveOut(line, "a rule only separates", number++);
                continue;
            }
            if (line.isEmpty() || item != null) {
                draft.paragraph();
            } else if (!spaced) {
                draft.lineOfItsOwn();
            }
            if (item != null) {
                draft.line(PlainLinks.marked(line.substring(item.end()), number, draft), number, item.mark());
            } else if (!line.isEmpty()) {
                draft.line(PlainLinks.marked(line, number, draft), number);
            }
            number++;
        }
    }
}
