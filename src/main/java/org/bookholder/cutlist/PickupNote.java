package org.bookholder.cutlist;

import org.bookholder.session.LineNotes;
import org.bookholder.session.Pickup;
import org.bookholder.session.Pickups;
import org.bookholder.session.SessionState;

/** What an editor reads of a line that is to be recorded again. */
final class PickupNote {
    private PickupNote() {}

    static String of(SessionState state, LineNotes line) {
        Pickup pickup = Pickups.of(state, line);
        StringBuilder text = new StringBuilder("pickup, line " + line.line());
        if (!line.reached()) {
            text.append(", not read yet");
        } else if (pickup.said().isEmpty()) {
            text.append(", ").append(pickup.outcome().label());
        } else {
            text.append(", ").append(pickup.outcome().label()).append(": ").append(pickup.said());
        }
        pickup.marks().stream()
                .filter(mark -> !mark.isEmpty())
                .forEach(mark -> text.append("; ").append(mark));
        return text.append(" (").append(pickup.firstWords()).append(')').toString();
    }
}
