package org.bookholder.runtime;

import java.util.function.LongSupplier;
import org.bookholder.desk.Feed;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;

/** Makes a desk's feed look at the session ten times a second. */
public final class DeskStage implements Stage {
    private static final long PERIOD_NANOS = 100_000_000L;

    private final Feed feed;
    private final LongSupplier nanoTime;
    private long last;

    /** Creates the stage; {@code nanoTime} is a monotonic clock in nanoseconds. */
    public DeskStage(Feed feed, LongSupplier nanoTime) {
        this.feed = feed;
        this.nanoTime = nanoTime;
        this.last = nanoTime.getAsLong() - PERIOD_NANOS;
    }

    @Override
    public String role() {
        return "desk";
    }

    @Override
    public Criticality criticality() {
        return Criticality.RESTARTABLE;
    }

    @Override
    public int doWork() {
        long now = nanoTime.getAsLong();
        if (now - last < PERIOD_NANOS) {
            return 0;
        }
        last = now;
        return feed.look() ? 1 : 0;
    }
}
