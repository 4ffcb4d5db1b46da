package org.bookholder.runtime;

import java.util.function.LongSupplier;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.session.CountIn;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;

/**
 * Counts takes in: each take is held when it begins, is counted in, and then goes on. Before the first take, and after a
 * change of the text in a hold, the count waits for someone to begin it. Confined to the session's thread.
 */
final class CountInDirector {
    private final SessionRecorder recorder;
    private final TakeControls takes;
    private final LongSupplier nanoTime;
    private final int seconds;
    private int seen;
    private boolean first = true;
    private long began;

    /**
     * Counts the takes of the session in {@code recorder} in.
     *
     * @param nanoTime a monotonic clock in nanoseconds
     * @param seconds how long to count; 0 for no count-in
     */
    CountInDirector(SessionRecorder recorder, TakeControls takes, LongSupplier nanoTime, int seconds) {
        this.recorder = recorder;
        this.takes = takes;
        this.nanoTime = nanoTime;
        this.seconds = seconds;
        seen = recorder.state().takes().count();
    }

    /** Holds a take that has just begun, and goes on with one that was counted in; call it often. */
    void advance() {
        SessionState state = recorder.state();
        if (takes.rolling() && state.takes().count() > seen) {
            seen = state.takes().count();
            if (seconds > 0) {
                boolean waits = first || state.takes().held();
                first = false;
                takes.hold();
                count(waits ? 0 : seconds);
            }
            return;
        }
        boolean counted = state.takes()
                .countIn()
                .filter(count -> !count.waiting() && nanoTime.getAsLong() - began >= count.seconds() * 1_000_000_000L)
                .isPresent();
        if (counted) {
            takes.resume();
        }
    }

    /** Begins a count that waits; goes on at once if it is being counted. */
    void begin() {
        recorder.state().takes().countIn().map(CountIn::waiting).ifPresent(waits -> {
            if (waits) {
                count(Math.max(1, seconds));
            } else {
                takes.resume();
            }
        });
    }

    private void count(int length) {
        began = nanoTime.getAsLong();
        recorder.enter(new SessionEvent.CountInStepped(recorder.state().now(), length));
    }
}
