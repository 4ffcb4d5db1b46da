package org.bookholder.session;

import java.util.List;

/**
 * A person's request to a session. It is turned into commands only when its turn comes, on the session's thread, so
 * that of two simultaneous requests the second sees what the first has changed.
 */
@FunctionalInterface
public interface Request {
    /**
     * The commands that fulfil it, in order; none if there is nothing to do.
     *
     * @param state the session's state when the commands are carried out
     * @throws IllegalArgumentException if it is not possible in this state; the message is for people
     */
    List<Command> commands(SessionState state);

    /** Receives the outcome of a request: exactly one call, on any thread. Must not block and must not throw. */
    interface Reply {
        /** It was carried out, and the journal has saved it. */
        void done();

        /**
         * It was not carried out because the session's state does not allow it; {@code why} is a part of a sentence.
         */
        void refused(String why);

        /** The session cannot accept or save it; {@code what} is one or more sentences. */
        void failed(String what);
    }
}
