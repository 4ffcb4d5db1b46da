package org.bookholder.script.model;

/**
 * Text that is shown to the presenter but not spoken.
 *
 * @param text plain text, without mark-up
 * @param paragraph paragraph number, from 0
 * @param sourceLine line of the source file, from 1
 */
public record Direction(String text, int paragraph, int sourceLine) implements ScriptElement {}
