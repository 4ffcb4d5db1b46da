package org.bookholder.session;

import java.time.Instant;
import org.bookholder.timing.StreamTime;

/**
 * One continuous recording.
 *
 * @param number take number, from 1
 * @param start where its audio begins in the session's audio
 * @param end where it ends so far
 * @param when time of day of its first sample
 * @param audio name of the microphone or file; empty if there is none
 */
public record Take(int number, StreamTime start, StreamTime end, Instant when, String audio) {
    /** Time of day at which its audio ends. */
    public Instant ended() {
        return when.plus(end.since(start).toDuration());
    }

    Take endingAt(StreamTime at) {
        return new Take(number, start, at, when, audio);
    }
}
