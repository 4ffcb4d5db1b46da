package org.bookholder.handoff;

import java.io.IOException;
import java.time.Duration;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.follow.Attempt;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/** The list to read: each line that is to be recorded again, and how the reading went. */
public final class PickupListExporter implements Exporter {
    private static final DateTimeFormatter TIME_OF_DAY = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
    private static final int FIRST_WORDS = 40;

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
        List<LineNotes> pickups = state.pickups();
        text.add("Pickup list: " + state.script().title());
        if (pickups.isEmpty()) {
            text.add("No line to pick up.");
        } else {
            text.add("");
            text.add(row("line", "outcome", "first words", "tried", "take", "in take", "time of day"));
            pickups.forEach(notes -> addPickup(text, state, notes));
        }
        text.add("");
        text.addAll(Summary.of(state));
        return text;
    }

    private void addPickup(List<String> text, SessionState state, LineNotes notes) {
        String words = firstWords(state, notes.line());
        int tried = notes.attempts().size();
        Optional<Attempt> shown = notes.telling();
        if (shown.isPresent()) {
            Attempt attempt = shown.get();
            SessionState.Take take = state.takes().get(attempt.take() - 1);
            StreamTime inTake = attempt.start().since(take.start());
            text.add(row(
                    Integer.toString(notes.line()),
                    notes.outcome().label(),
                    words,
                    Integer.toString(tried),
                    Integer.toString(attempt.take()),
                    Summary.tenths(inTake),
                    TIME_OF_DAY.format(take.when()
                            .plus(Duration.ofMillis(Math.round(1000 * inTake.seconds())))
                            .atZone(zone))));
            attempt.deviations().forEach(d -> text.add(detail(Summary.deviation(d))));
        } else {
            text.add(row(Integer.toString(notes.line()), notes.outcome().label(), words, "0", "", "", ""));
        }
        notes.marks().forEach(mark -> text.add(detail(mark.isEmpty() ? "marked by hand" : "marked: " + mark)));
    }

    private static String firstWords(SessionState state, int line) {
        String text = state.script().lines().get(line - 1).text();
        if (text.codePointCount(0, text.length()) <= FIRST_WORDS) {
            return text;
        }
        String cut = text.substring(0, text.offsetByCodePoints(0, FIRST_WORDS - 3));
        int space = cut.lastIndexOf(' ');
        return (space > 0 ? cut.substring(0, space) : cut) + "...";
    }

    private static String row(Object... cells) {
        return String.format(Locale.ROOT, "%5s  %-10s  %-40s  %5s  %4s  %8s  %s", cells);
    }

    private static String detail(String text) {
        return row("", "", "  " + text, "", "", "", "");
    }
}
