package org.bookholder.cli;

import java.time.ZoneId;
import java.util.List;
import org.bookholder.handoff.Exporter;
import org.bookholder.handoff.NotesJsonExporter;
import org.bookholder.handoff.PickupListExporter;
import org.bookholder.handoff.TraceExporter;

/** The one list of what a user can choose: a new exporter is added here and nowhere else. */
public final class Installed {
    private static final List<Exporter> EXPORTERS =
            List.of(new PickupListExporter(ZoneId.systemDefault()), new NotesJsonExporter(), new TraceExporter());

    private Installed() {}

    /** Every export format, in the order that the command line lists them. */
    public static List<Exporter> exporters() {
        return EXPORTERS;
    }
}
