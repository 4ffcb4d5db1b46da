package org.bookholder.script.model;

/**
 * Text that is shown to the presenter but not spoken.
 *
 * @param text plain text, without mark-up
 * @param paragraph paragraph number, from 0
 * @param sourceLine line of the source file, from 1
 * @param heading whether it is the heading of a part of the lesson
 */
public record Direction(String text, int paragraph, int sourceLine, boolean heading) implements ScriptElement {
    /** A direction that is no heading. */
    public Direction(String text, int paragraph, int sourceLine) {
        this(text, paragraph, sourceLine, false);
    }
}
