package org.bookholder.session;

import org.bookholder.timing.StreamTime;

/**
 * A person's note on a line.
 *
 * @param at audio captured when it was written
 * @param line line number, from 1
 * @param text the note; may be empty if the line was marked
 * @param by who wrote it
 * @param pickup whether it also marks the line as a pickup
 */
public record Note(StreamTime at, int line, String text, Person by, boolean pickup) {}
