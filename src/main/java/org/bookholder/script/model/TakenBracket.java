package org.bookholder.script.model;

/**
 * A remark in square brackets, and how it was taken.
 *
 * @param sourceLine line of the source file, from 1
 * @param text the brackets with what is in them
 * @param read whether it is read aloud; otherwise it is shown to the presenter
 * @param alone whether it is no part of a sentence
 * @param why why it was taken so, a phrase for people
 */
public record TakenBracket(int sourceLine, String text, boolean read, boolean alone, String why) {}
