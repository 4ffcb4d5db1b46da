package org.bookholder.script.model;

import java.util.List;

/**
 * A picture or clip of the author's that stands in a script, as in {@code ![the jar at noon](jar.jpg)}: it is shown in the film while
 * the voice goes on.
 *
 * @param file its file as the script names it, relative to the script's folder or whole
 * @param text what it shows, in the author's words; its file's name if there are none
 * @param line number of the line at which it appears, from 1
 * @param word the word of that line with which it appears, from 1
 * @param sourceLine line of the script's file, from 1
 */
public record Cover(String file, String text, int line, int word, int sourceLine) {
    /** The last line of a script that it is shown over: before the next direction, or the paragraph's last. */
    public int lastLine(List<ScriptElement> elements) {
        int last = line;
        int paragraph = -1;
        for (ScriptElement element : elements) {
            if (element instanceof ScriptLine spoken && spoken.number() >= line) {
                if (paragraph >= 0 && spoken.paragraph() != paragraph) {
                    return last;
                }
                paragraph = spoken.paragraph();
                last = spoken.number();
            } else if (element instanceof Direction direction && paragraph >= 0 && !isOf(direction)) {
                return last;
            }
        }
        return last;
    }

    /** Whether a direction is what the presenter sees of it. */
    private boolean isOf(Direction direction) {
        return direction.sourceLine() == sourceLine && direction.text().equals(text);
    }
}
