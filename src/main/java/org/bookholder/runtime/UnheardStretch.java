package org.bookholder.runtime;

import java.util.stream.IntStream;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.model.UnjudgedStretch;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/**
 * A stretch of a take that the script ear did not hear, while it is not known yet where the voice continued.
 *
 * @param take take number, from 1
 * @param start where it begins in the session's audio
 * @param end where it ends
 * @param from where the reading was at its beginning
 * @param position the reading position when the ear was restarted
 */
record UnheardStretch(int take, StreamTime start, StreamTime end, ReadingPosition from, ReadingPosition position) {
    /**
     * The event that the lines from where the reading was to where it continues are not judged; {@code lines} is the
     * number of lines in the script.
     */
    SessionEvent event(StreamTime at, ReadingPosition goesOn, int lines, String log) {
        int first = Math.min(Math.min(from.line(), position.line()), lines);
        // A line whose beginning was not heard cannot be judged either.
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
