package org.bookholder.app.handoff;

import java.io.IOException;
import java.io.OutputStream;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.bookholder.handoff.pdf.PickupPdf;
import org.bookholder.session.SessionState;
import org.bookholder.wording.Labels;
import org.bookholder.wording.Pickup;
import org.bookholder.wording.Pickups;

/** Writes the current pickup list as a page to print. */
public final class PickupSheet {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

    private PickupSheet() {}

    public static void write(SessionState state, ZoneId zone, OutputStream out) throws IOException {
        List<PickupPdf.Entry> entries =
                Pickups.of(state).stream().map(p -> entry(state, p, zone)).toList();
        PickupPdf.write(state.script().title(), entries, out);
    }

    private static PickupPdf.Entry entry(SessionState state, Pickup pickup, ZoneId zone) {
        return new PickupPdf.Entry(
                Integer.toString(pickup.line()),
                state.line(pickup.line()).text(),
                Labels.of(pickup.outcome()) + (pickup.said().isEmpty() ? "" : ": " + pickup.said()),
                pickup.where()
                        .map(w ->
                                "take " + w.take() + ", " + TIME.format(w.when().atZone(zone)))
                        .orElse("not tried"),
                String.join("; ", pickup.written()));
    }
}
