package org.bookholder.app.session;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.journal.SessionRepair.Report;

/** Says in words what a repair did. */
public final class RepairText {
    private RepairText() {}

    /** The lines of a report on the session in {@code place}. */
    public static List<String> of(SessionRepairs.Outcome outcome, String place) {
        Report report = outcome.report();
        List<String> lines = new ArrayList<>();
        if (report.copies().isEmpty()) {
            lines.add("Nothing had to be repaired in " + place + ".");
        } else {
            lines.add("The files as they were: " + report.copies().get());
            lines.add("Saved: " + entries(report.saved()) + " in the notes.");
        }
        if (report.gone() > 0) {
            lines.add("Gone:  " + entries(report.gone()) + ", as far as can be told.");
        }
        if (report.changed() > 0) {
            lines.add("Changed on the disk, with no other copy left: " + entries(report.changed())
                    + ", kept as found. Look through the notes once more.");
        }
        if (report.scriptCopied()) {
            lines.add("The script is that of the copy in the session's folder.");
        }
        if (!report.takesPutBack().isEmpty()) {
            String takes = report.takesPutBack().stream().map(String::valueOf).collect(Collectors.joining(", "));
            lines.add("The notes had lost where these takes begin; it was worked out again: " + takes);
        }
        report.headers().forEach(file -> lines.add("The header was written again: " + file.getFileName()));
        report.lost().forEach(what -> lines.add("Not saved: " + what));
        outcome.takenIn().forEach(sentence -> lines.add("Taken in: " + sentence + "."));
        return lines;
    }

    private static String entries(long count) {
        return count == 1 ? "1 entry" : count + " entries";
    }
}
