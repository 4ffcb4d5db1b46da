package org.bookholder.app.footage;

import org.bookholder.app.reading.ReadingListener;
import org.bookholder.app.reading.ReadingResult;
import org.bookholder.footage.Footage;

/** Follows how footage becomes a session. Called on the thread that does the work. */
public interface FootageLogListener {
    /** A file is followed from now on; returns who is told how that goes. */
    ReadingListener following(Footage file);

    /** The file was followed to its end, or until the work was stopped. */
    void followed(ReadingResult result);
}
