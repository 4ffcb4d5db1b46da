package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Progress;
import org.bookholder.desk.ServedSession;
import org.bookholder.session.SessionState;
import org.bookholder.session.Troubles;

/** Receives the progress of a reading from preparation to end. Called on the thread that runs the reading. */
public interface ReadingListener {
    /** Script, sound and recogniser are ready; the session is not open yet. */
    void prepared(ReadingSetup setup);

    /**
     * The session is open.
     *
     * @param session its folder
     * @param continued whether it is an interrupted session that continues
     */
    void opened(Path session, boolean continued);

    /** A new session was begun beside one of the same lesson that was broken off and is left as it is. */
    default void leftAside(Path brokenOff) {}

    /** What was known before the reading begins, of a session that goes on. */
    default void goesOnFrom(SessionState before) {}

    /** How long a recording there is room for, one sentence; said before the reading begins if it is enough. */
    default void room(String sentence) {}

    /**
     * Interrupted takes of the session are first followed again from their recordings; {@link #progress} reports how
     * far.
     */
    void recovering(List<Integer> takes);

    /** Progress of work that must be done before the reading begins. */
    void progress(Progress progress);

    /** The session can be shown to producers until the reading is over. */
    default void served(ServedSession session) {}

    /** Where a reading without a window is followed, for people. */
    default String withoutWindow() {
        return "in the terminal";
    }

    /** How a reading is ended whose window is gone, for people: a clause. */
    default String endedBy() {
        return "Enter ends it";
    }

    /** The desk is open. */
    void deskOpened(RunningDesk desk);

    /** The session's state, several times a second; only if there is no window. */
    void stateChanged(SessionState state, boolean over);

    /** The troubles have changed; empty if all is well again. */
    void troublesChanged(Troubles troubles);

    /** The take is over, but this many seconds of it are still to be processed. */
    void stillListening(double seconds);

    /** Something a person should know, one sentence; the reading continues. */
    void warned(String sentence);

    /** Something for people who look for the cause of a problem, one sentence. */
    void noted(String sentence);
}
