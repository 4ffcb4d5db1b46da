package org.bookholder.script.model;

/**
 * A piece of a script's file that is neither read aloud nor shown to the presenter.
 *
 * @param sourceLine line of the source file, from 1; 0 if the file has no lines
 * @param what the piece, as short plain text
 * @param why why it is left out, a phrase for people
 */
public record LeftOut(int sourceLine, String what, String why) {}
