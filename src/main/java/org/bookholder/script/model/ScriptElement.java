package org.bookholder.script.model;

/** Something that stands in a script and is shown to the presenter. */
public sealed interface ScriptElement permits ScriptLine, Direction {
    /** The paragraph, from 0, so that a view can set paragraphs apart. */
    int paragraph();

    /** The line of the source file on which it begins, from 1, for messages. */
    int sourceLine();
}
