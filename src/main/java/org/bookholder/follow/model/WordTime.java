package org.bookholder.follow.model;

import org.bookholder.timing.StreamTime;

/**
 * When a script word was read.
 *
 * @param word word of the line, from 1
 * @param start when it begins
 * @param end when it ends
 * @param said the form in which it was heard, words separated by single spaces; empty if it has no choice of forms, or was not heard as
 *     written
 */
public record WordTime(int word, StreamTime start, StreamTime end, String said) {
    /** A word of which it does not matter how it was said. */
    public WordTime(int word, StreamTime start, StreamTime end) {
        this(word, start, end, "");
    }
}
