package org.bookholder.session;

import org.bookholder.timing.StreamTime;

/**
 * A person's note on a line.
 *
 * @param number its number in the session, from 1; 0 if it can be neither changed nor taken back
 * @param at audio captured when it was written
 * @param line line number, from 1
 * @param text the note; may be empty if the line was marked
 * @param by who wrote it
 * @param pickup whether it also marks the line as a pickup
 */
public record Note(int number, StreamTime at, int line, String text, Person by, boolean pickup) {
    Note withText(String changed) {
        return new Note(number, at, line, changed, by, pickup);
    }

    Note movedTo(int other) {
        return new Note(number, at, other, text, by, pickup);
    }
}
