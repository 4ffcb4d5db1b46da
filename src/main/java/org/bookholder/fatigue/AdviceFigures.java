package org.bookholder.fatigue;

import java.time.Duration;

/** The figures behind an advice on a break; {@code org.bookholder.wording} puts them into words. */
public sealed interface AdviceFigures {
    /** Calls the handler's method for these figures and returns its result. */
    <T> T to(Handler<T> handler);

    /**
     * Receives figures by kind.
     *
     * @param <T> the result of each method
     */
    interface Handler<T> {
        /** Receives {@link Clock}. */
        T clock(Clock figures);

        /** Receives {@link TooLittle}. */
        T tooLittle(TooLittle figures);

        /** Receives {@link Fluffs}. */
        T fluffs(Fluffs figures);

        /** Receives {@link Pace}. */
        T pace(Pace figures);
    }

    /**
     * A clock and its limit.
     *
     * @param elapsed the time on the clock
     * @param limit the limit that it is compared with
     * @param rested whether there has been a real break in the session
     */
    record Clock(Duration elapsed, FatigueLimits.Limit limit, boolean rested) implements AdviceFigures {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.clock(this);
        }
    }

    /** Too little was read to judge stumbling. */
    record TooLittle() implements AdviceFigures {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.tooLittle(this);
        }
    }

    /**
     * How often the reader stumbled.
     *
     * @param recent fluffs per 100 words over the last ten minutes
     * @param baseline fluffs per 100 words over the session's first twenty minutes
     */
    record Fluffs(double recent, double baseline) implements AdviceFigures {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.fluffs(this);
        }
    }

    /**
     * How fast the reader read.
     *
     * @param recent words per minute over the last ten minutes
     * @param baseline words per minute over the session's first twenty minutes
     */
    record Pace(double recent, double baseline) implements AdviceFigures {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.pace(this);
        }
    }
}
