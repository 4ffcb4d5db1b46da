package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Progress;
import org.bookholder.session.SessionState;
import org.bookholder.session.Troubles;

/** Follows a reading from its preparation to its end. Called on the thread that runs the reading. */
public interface ReadingListener {
    /** Script, sound and recogniser are ready; the session is not open yet. */
    void prepared(ReadingSetup setup);

    /**
     * The session is open.
     *
     * @param session its folder
     * @param continued whether it is one that was broken off and goes on by itself
     */
    void opened(Path session, boolean continued);

    /** Takes of the session that were broken off are listened to again first; {@link #progress} tells how far that is. */
    void recovering(List<Integer> takes);

    /** How far work has got that must be done before the reading begins. */
    void progress(Progress progress);

    /** The desk is open. */
    void deskOpened(RunningDesk desk);

    /** The state of the session, several times a second; only where no window shows it. */
    void stateChanged(SessionState state, boolean over);

    /** What stands in the way of the reading has changed; none if all is well again. */
    void troublesChanged(Troubles troubles);

    /** The take is over, and so many seconds of it are still to be listened to. */
    void stillListening(double seconds);

    /** Something that a person should know, one sentence; the reading goes on. */
    void warned(String sentence);

    /** Something that only somebody who looks for a cause wants to know, one sentence. */
    void noted(String sentence);
}
