package org.bookholder.app.footage;

import org.bookholder.app.reading.ReadingListener;
import org.bookholder.app.reading.ReadingResult;
import org.bookholder.footage.RecordingJoiner;
import org.bookholder.footage.WholeRecording;

/** Receives the progress of turning footage into a session. Called on the thread that does the work. */
public interface FootageLogListener {
    /** Two files may be parts of one recording and are not joined. Comes before anything is followed. */
    void apart(RecordingJoiner.Apart files);

    /** Following of a recording begins, of one file or of several that are joined; returns the listener for it. */
    ReadingListener following(WholeRecording recording);

    /** Following of a recording ended, at its end or because the work was stopped. */
    void followed(ReadingResult result);
}
