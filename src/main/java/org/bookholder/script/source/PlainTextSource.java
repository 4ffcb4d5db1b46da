package org.bookholder.script.source;

import org.jspecify.annotations.Nullable;

/**
 * Extracts the lines from plain text. Blank lines separate paragraphs; in a text without blank lines each line is a
 * paragraph, as word processors export it. Each item of a list is a paragraph of its own.
 */
final class PlainTextSource {
    private PlainTextSource() {}

    /** Reads {@code text}, which begins at line {@code firstLine} of its file, into {@code draft}. */
    static void read(String text, int firstLine, ScriptBuilder draft) {
        boolean spaced = text.strip().lines().anyMatch(String::isBlank);
        int number = firstLine;
        for (String row : text.split("\\R", -1)) {
            String line = row.strip();
            ListMark.@Nullable Found item = ListMark.at(line);
            if (line.isEmpty() || item != null) {
                draft.paragraph();
            } else if (!spaced) {
                draft.lineOfItsOwn();
            }
            if (item != null) {
                draft.line(MarkedSourceLine.plain(line.substring(item.end())), number, item.mark());
            } else if (!line.isEmpty()) {
                draft.line(MarkedSourceLine.plain(line), number);
            }
            number++;
        }
    }
}
