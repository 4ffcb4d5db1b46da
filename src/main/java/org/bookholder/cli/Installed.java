package org.bookholder.cli;

import java.util.List;
import org.bookholder.handoff.Exporter;

/** The one list of what a user can choose: a new exporter is added here and nowhere else. */
public final class Installed {
    private static final List<Exporter> EXPORTERS = List.of();

    private Installed() {}

    /** Every export format, in the order that the command line lists them. */
    public static List<Exporter> exporters() {
        return EXPORTERS;
    }
}
