package org.bookholder.app.reading;

/** Ends a reading from outside. Called several times a second, on the thread that runs the reading. */
public interface ReadingControl {
    /** Whether the reading should end as soon as possible; stays true once it is. */
    boolean interrupted();

    /** Whether somebody has asked since the last call to end the reading; called only if there is no window. */
    boolean finishRequested();
}
