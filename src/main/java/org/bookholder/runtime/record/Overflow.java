package org.bookholder.runtime.record;

import java.util.List;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/** A second place for what a session's folder refuses. Safe for use by several threads. */
public interface Overflow {
    /** No second place. */
    Overflow NONE = new Overflow() {
        @Override
        public Tape begin(int take, int rate, StreamTime takeStart, long first) throws ProblemException {
            throw noPlace();
        }

        @Override
        public int keep(List<SessionEvent> rest, Optional<SessionEvent> before) throws ProblemException {
            if (rest.isEmpty()) {
                return 0;
            }
            throw noPlace();
        }

        private ProblemException noPlace() {
            return new ProblemException("there is no second place", "the session", "free some space");
        }

        @Override
        public String place() {
            return "";
        }
    };

    /**
     * Begins a tape for a stretch of a take.
     *
     * @param takeStart where the take's audio begins in the session's
     * @param first the stretch's first sample, counted from the take's first, which is 0
     * @throws ProblemException if no second place takes it
     */
    Tape begin(int take, int rate, StreamTime takeStart, long first) throws ProblemException;

    /**
     * Keeps events that are not in the session's journal, in place of those that were given before; of a session whose folder is
     * gone, all that can still be read. Only what is new is written.
     *
     * @param rest the events that could not be written, in order; empty if there are none any more
     * @param before the last event that was written, if it is known
     * @return how many are kept
     * @throws ProblemException if no second place takes them; those that it took before may stay there
     */
    int keep(List<SessionEvent> rest, Optional<SessionEvent> before) throws ProblemException;

    /** Where it is, for people; empty while nothing is kept. */
    String place();
}
