package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.ReadingProgress;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.stage.StageFault;

/** What is said when a reading is over and not all went well. */
final class Endings {
    private Endings() {}

    /** Says what was not followed or not saved, where the log of faults is, and returns the exit status. */
    static int status(Reading reading, Path folder, Terminal terminal) {
        ReadingProgress progress = reading.progress();
        if (progress.unheard().ticks() > 0) {
            terminal.err()
                    .printf(
                            Locale.ROOT,
                            "bookholder: %.1f s were not followed live, this machine being too busy; close other"
                                    + " programs%n",
                            progress.unheard().seconds());
        }
        int status = 0;
        if (!progress.unsaved().isEmpty()) {
            terminal.err().println("bookholder: " + folder + ": " + progress.unsaved() + "; keep the list above");
            status = 2;
        }
        if (reading.fault().isPresent()) {
            tell(reading.fault().get(), reading, folder, terminal);
            status = 1;
        } else if (reading.firstFault().isPresent()) {
            terminal.err()
                    .println("bookholder: a part of the program failed and the session went on; "
                            + folder.resolve(FaultLog.FILE) + " says more");
        }
        return status;
    }

    private static void tell(StageFault fault, Reading reading, Path folder, Terminal terminal) {
        List<String> unwritten = reading.unwrittenLog();
        if (unwritten.isEmpty()) {
            terminal.err()
                    .println("bookholder: a fault of the program ended the session; what was read is kept, and "
                            + folder.resolve(FaultLog.FILE) + " says more");
        } else {
            terminal.err()
                    .println(
                            "bookholder: a fault of the program ended the session in the stage '" + fault.role() + "'");
            unwritten.forEach(terminal.err()::print);
        }
    }
}
