package org.bookholder.app.reading;

import java.util.List;
import org.bookholder.session.Request;

/** Ends a reading from outside. Called several times a second, on the thread that runs the reading. */
public interface ReadingControl {
    /** Whether the reading should end as soon as possible; stays true once it is. */
    boolean interrupted();

    /** Whether somebody has asked since the last call to end the reading; called only if there is no window. */
    boolean finishRequested();

    /** What somebody has asked of the session since the last call, in order; called only if there is no window. */
    default List<Request> requests() {
        return List.of();
    }
}
