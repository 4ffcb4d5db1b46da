package org.bookholder.script.source;

/**
 * Extracts the lines and directions from plain text: blank lines separate paragraphs, and a line in square brackets is
 * a direction.
 */
final class PlainTextSource {
    private PlainTextSource() {}

    /** Reads {@code text}, which begins at line {@code firstLine} of its file, into {@code draft}. */
    static void read(String text, int firstLine, ScriptBuilder draft) {
        int number = firstLine;
        for (String row : text.split("\\R", -1)) {
            String line = row.strip();
            if (line.isEmpty()) {
                draft.paragraph();
            } else if (isDirection(line)) {
                draft.direction(line.substring(1, line.length() - 1), number);
            } else {
                draft.line(MarkedSourceLine.plain(line), number);
            }
            number++;
        }
    }

    private static boolean isDirection(String line) {
        return line.startsWith("[") && line.indexOf(']') == line.length() - 1 && line.indexOf('[', 1) < 0;
    }
}
