package org.bookholder.app.reading;

/** How a reading is ended from outside. Asked several times a second, on the thread that runs the reading. */
public interface ReadingControl {
    /** Whether the reading is to end as soon as it can; stays true from then on. */
    boolean interrupted();

    /** Whether somebody has asked since the last call to end the reading; asked only where no window is shown. */
    boolean finishRequested();
}
