package org.bookholder.app.footage;

import org.bookholder.app.reading.ReadingListener;
import org.bookholder.app.reading.ReadingResult;
import org.bookholder.footage.Footage;

/** Receives the progress of turning footage into a session. Called on the thread that does the work. */
public interface FootageLogListener {
    /** Following of a file begins; returns the listener for it. */
    ReadingListener following(Footage file);

    /** Following of a file ended, at its end or because the work was stopped. */
    void followed(ReadingResult result);
}
