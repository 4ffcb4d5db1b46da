package org.bookholder.runtime;

import java.util.stream.IntStream;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.model.UnjudgedStretch;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/**
 * A stretch of a take that the script ear did not hear, of which it is not known yet where the voice went on.
 *
 * @param take take number, from 1
 * @param start where it begins in the session's audio
 * @param end where it ends
 * @param from where the reading was at its beginning
 * @param position where the reading was when the ear was started again
 */
record UnheardStretch(int take, StreamTime start, StreamTime end, ReadingPosition from, ReadingPosition position) {
    /** Says that of so many {@code lines} those from where the reading was to where it goes on are not judged. */
    SessionEvent event(StreamTime at, ReadingPosition goesOn, int lines, String log) {
        int first = Math.min(Math.min(from.line(), position.line()), lines);
        // A line of which the beginning was not heard cannot be judged either.
        int last = Math.max(first, Math.min(goesOn.line(), lines));
        return new SessionEvent.NotJudged(
                at,
                new UnjudgedStretch(
                        take,
                        start,
                        end,
                        IntStream.rangeClosed(first, last).boxed().toList()),
                log);
    }
}
