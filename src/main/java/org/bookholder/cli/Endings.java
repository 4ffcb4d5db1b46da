package org.bookholder.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Locale;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.ReadingProgress;

/** What is said when a reading is over and not all went well. */
final class Endings {
    private static final String LOG = "fault.log";

    private Endings() {}

    /** Says what was not followed or not saved, keeps the trace of a fault, and returns the exit status. */
    static int status(Reading reading, Path folder, Terminal terminal) {
        ReadingProgress progress = reading.progress();
        if (progress.unheard().ticks() > 0) {
            terminal.err()
                    .printf(
                            Locale.ROOT,
                            "bookholder: %.1f s were not followed live, this machine being too busy; close other programs%n",
                            progress.unheard().seconds());
        }
        int status = 0;
        if (!progress.unsaved().isEmpty()) {
            terminal.err().println("bookholder: " + folder + ": " + progress.unsaved() + "; keep the list above");
            status = 2;
        }
        if (reading.fault().isPresent()) {
            keep(reading.fault().get(), folder, terminal);
            status = 1;
        }
        return status;
    }

    private static void keep(Reading.Fault fault, Path folder, Terminal terminal) {
        StringWriter trace = new StringWriter();
        fault.cause().printStackTrace(new PrintWriter(trace));
        String heading = "in the stage '" + fault.role() + "'";
        try {
            new AtomicFiles(Access.OWNER).write(folder.resolve(LOG), heading + "\n" + trace);
            terminal.err()
                    .println("bookholder: a fault of the program ended the session; what was read is kept, and "
                            + folder.resolve(LOG) + " says more");
        } catch (IOException e) {
            terminal.err().println("bookholder: a fault of the program ended the session " + heading);
            terminal.err().print(trace);
        }
    }
}
