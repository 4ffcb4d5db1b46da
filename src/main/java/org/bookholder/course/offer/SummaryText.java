package org.bookholder.course.offer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.course.Text;

/** The summary as plain text, to read in a terminal or to send. */
public final class SummaryText {
    private static final int TITLE = 52;

    private SummaryText() {}

    /** The text, line by line; {@code own} are a person's own words, which come first, or an empty text. */
    public static List<String> of(CourseSummary summary, String own) {
        List<String> out = new ArrayList<>();
        out.add(summary.title());
        out.add("As it stands on " + summary.day());
        out.add("");
        if (!own.isBlank()) {
            own.strip().lines().forEach(line -> out.addAll(Text.wrap(line)));
            out.add("");
        }
        out.addAll(Text.wrap(summary.sentence()));
        out.addAll(Text.wrap(summary.extent()));
        for (CourseSummary.Step step : summary.steps()) {
            out.add(String.format(Locale.ROOT, "  %-22s %3d of %d", step.name(), step.done(), summary.lessons()));
        }
        summary.lastRecorded().ifPresent(day -> out.add("Recorded last on " + day));
        for (CourseSummary.Part part : summary.parts()) {
            if (!part.heading().isEmpty() || !part.rows().isEmpty()) {
                out.add("");
            }
            if (!part.heading().isEmpty()) {
                out.add(part.heading() + ": " + part.ready() + " of " + part.lessons() + " finished");
            }
            part.rows()
                    .forEach(row -> out.add(String.format(
                            Locale.ROOT, "%3d  %s  %s", row.number(), Text.fit(row.title(), TITLE), row.standing())));
        }
        if (!summary.caution().isEmpty()) {
            out.add("");
            out.addAll(Text.wrap(summary.caution()));
        }
        return out;
    }
}
