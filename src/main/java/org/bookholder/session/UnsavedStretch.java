package org.bookholder.session;

import org.bookholder.timing.StreamTime;

/**
 * A stretch of a take of which no sound was saved.
 *
 * @param take take number, from 1
 * @param start where it begins in the session's audio
 * @param end where it ends
 */
public record UnsavedStretch(int take, StreamTime start, StreamTime end) {}
