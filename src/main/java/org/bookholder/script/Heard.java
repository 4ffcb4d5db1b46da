package org.bookholder.script;

/**
 * A stretch of text and how it is said.
 *
 * @param end index after its last character
 * @param forms the ways to say it
 */
record Heard(int end, Forms forms) {}
