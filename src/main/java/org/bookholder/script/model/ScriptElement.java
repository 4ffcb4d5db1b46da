package org.bookholder.script.model;

/** A part of a script that is shown to the presenter. */
public sealed interface ScriptElement permits ScriptLine, Direction {
    /** The paragraph, from 0, so that a view can separate paragraphs. */
    int paragraph();

    /** What is shown, plain text. */
    String text();

    /** The line of the source file on which it begins, from 1, for messages. */
    int sourceLine();
}
