package org.bookholder.handoff;

import java.io.IOException;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.wording.Labels;
import org.bookholder.wording.Pickup;
import org.bookholder.wording.Pickup.Place;
import org.bookholder.wording.Pickups;

/** Exports a list for people: each line that must be recorded again, and how the reading went. */
public final class PickupListExporter implements Exporter {
    private static final DateTimeFormatter TIME_OF_DAY = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

    private final ZoneId zone;

    /** Creates an exporter that writes times of day as in {@code zone}. */
    public PickupListExporter(ZoneId zone) {
        this.zone = zone;
    }

    @Override
    public String name() {
        return "list";
    }

    @Override
    public String description() {
        return "the lines to pick up and a summary, to read";
    }

    @Override
    public void write(SessionState state, List<SessionEvent> events, Appendable out) throws IOException {
        for (String line : lines(state)) {
            out.append(line.stripTrailing()).append('\n');
        }
    }

    private List<String> lines(SessionState state) {
        List<String> text = new ArrayList<>();
        List<Pickup> pickups = Pickups.of(state);
        text.add("Pickup list: " + state.script().title());
        if (pickups.isEmpty()) {
            text.add("No line to pick up.");
        } else {
            text.add("");
            text.add(row("line", "outcome", "first words", "tried", "take", "in take", "time of day"));
            pickups.forEach(pickup -> add(text, pickup));
        }
        List<Pickup> fixes = Pickups.fixes(state);
        if (!fixes.isEmpty()) {
            text.add("");
            text.add("To fix in the edit:");
            fixes.forEach(fix -> add(text, fix));
        }
        text.add("");
        text.addAll(Summary.of(state));
        return text;
    }

    private void add(List<String> text, Pickup pickup) {
        Optional<Place> where = pickup.where();
        text.add(row(
                Integer.toString(pickup.line()),
                Labels.of(pickup.outcome()),
                pickup.firstWords(),
                Integer.toString(pickup.attempts()),
                where.map(place -> Integer.toString(place.take())).orElse(""),
                where.map(place -> Summary.tenths(place.inTake())).orElse(""),
                where.map(place -> TIME_OF_DAY.format(place.when().atZone(zone)))
                        .orElse("")));
        // For a skipped line, the outcome is all there is to say.
        if (pickup.outcome() != Outcome.SKIPPED && !pickup.said().isEmpty()) {
            text.add(detail(pickup.said()));
        }
        pickup.marks().forEach(mark -> text.add(detail(mark.isEmpty() ? "marked by hand" : "marked: " + mark)));
        pickup.notes().forEach(note -> text.add(detail("note: " + note)));
    }

    private static String row(Object... cells) {
        return String.format(Locale.ROOT, "%5s  %-10s  %-40s  %5s  %4s  %8s  %s", cells);
    }

    private static String detail(String text) {
        return row("", "", "  " + text, "", "", "", "");
    }
}
