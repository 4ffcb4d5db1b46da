package org.bookholder.session;

import java.util.List;

/**
 * What a person asks of a session. It is turned into commands only when its turn comes, on the session's thread: of two
 * people who ask at the same moment, the second one's request sees what the first one's has changed.
 */
@FunctionalInterface
public interface Request {
    /**
     * The commands that do it, in order; none if everything is as asked already.
     *
     * @param state the session as it is when the commands are carried out
     * @throws IllegalArgumentException if it cannot be done in this state; the message is for people
     */
    List<Command> commands(SessionState state);

    /** Who is told, exactly once and on any thread, what became of a request. Must not wait and must not throw. */
    interface Reply {
        /** It is done, and the journal has it. */
        void done();

        /** It was not done, because the session's state does not allow it; {@code why} is half a sentence. */
        void refused(String why);

        /** The session cannot take it, or cannot save it; {@code what} is one or more sentences. */
        void failed(String what);
    }
}
