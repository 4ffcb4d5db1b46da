package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.KeptElsewhere;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/**
 * The result of a reading.
 *
 * @param session the session's folder
 * @param state the session at its end
 * @param nextLesson whether it was ended so that the next lesson of the running order can be read
 * @param unheard how much was not followed live because the machine was too busy
 * @param unsaved why not everything could be saved; empty if it was
 * @param elsewhere what was saved in a second place; empty if all is in the session's folder, or is unsaved
 * @param fault the fault of the program that ended the reading, if one did
 * @param partFailed whether any part of the program failed, even one the reading could do without
 * @param unwrittenLog entries that could not be written to the log of faults; empty if all are in the file
 */
public record ReadingResult(
        Path session,
        SessionState state,
        boolean nextLesson,
        StreamTime unheard,
        String unsaved,
        Optional<KeptElsewhere> elsewhere,
        Optional<StageFault> fault,
        boolean partFailed,
        List<String> unwrittenLog) {
    static ReadingResult of(Reading reading, Path session, Optional<KeptElsewhere> elsewhere) {
        return new ReadingResult(
                session,
                reading.state().get(),
                reading.nextLesson(),
                reading.progress().unheard(),
                reading.progress().unsaved(),
                elsewhere,
                reading.fault(),
                reading.firstFault().isPresent(),
                reading.unwrittenLog());
    }

    /** The log of faults; exists only if a part of the program failed. */
    public Path log() {
        return session.resolve(FaultLog.FILE);
    }
}
