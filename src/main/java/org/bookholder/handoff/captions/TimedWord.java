package org.bookholder.handoff.captions;

import org.bookholder.timing.StreamTime;

/**
 * A word as written, with the time at which it is said in a film.
 *
 * @param text the word with its punctuation
 * @param start when it begins
 * @param end when it ends
 */
public record TimedWord(String text, StreamTime start, StreamTime end) {}
