package org.bookholder.session;

import org.bookholder.timing.StreamTime;

/**
 * What a person noted on a line.
 *
 * @param at audio taken in when it was noted
 * @param line line number, from 1
 * @param text what was written; may be empty if the line was marked
 * @param by who noted it
 * @param pickup whether the line was marked as a pickup with it
 */
public record Note(StreamTime at, int line, String text, Person by, boolean pickup) {}
