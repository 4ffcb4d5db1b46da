package org.bookholder.script.normalize;

/**
 * A stretch of text and how it is said.
 *
 * @param end index after its last character
 * @param forms the ways to say it
 */
public record SpokenSpan(int end, SpokenForms forms) {}
