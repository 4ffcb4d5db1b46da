package org.bookholder.handoff.pickups;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.timeline.MediaLocator;
import org.bookholder.session.SessionState;
import org.bookholder.wording.Pickup;
import org.bookholder.wording.Pickups;

/**
 * One row of the pickup list, or of the lines for the editor to fix.
 *
 * @param pickup the line's outcome
 * @param text the whole line
 * @param time time of day at which it was read, or should have been
 * @param place where to find that moment
 */
record PickupRow(Pickup pickup, String text, Optional<LocalDateTime> time, Optional<MediaLocator.Place> place) {
    /** The lines to record again. */
    static List<PickupRow> of(HandOff handOff) {
        return of(handOff, Pickups.of(handOff.state()));
    }

    /** The lines for the editor to fix. */
    static List<PickupRow> fixes(HandOff handOff) {
        return of(handOff, Pickups.fixes(handOff.state()));
    }

    private static List<PickupRow> of(HandOff handOff, List<Pickup> pickups) {
        SessionState state = handOff.state();
        MediaLocator places = new MediaLocator(handOff.timeline().timecode(), handOff.media());
        return pickups.stream()
                .map(pickup -> new PickupRow(
                        pickup,
                        state.line(pickup.line()).text(),
                        pickup.where().map(w -> LocalDateTime.ofInstant(w.when(), handOff.zone())),
                        pickup.where()
                                .flatMap(w -> places.of(
                                        w.take(),
                                        state.takes()
                                                .all()
                                                .get(w.take() - 1)
                                                .start()
                                                .plus(w.inTake())))))
                .toList();
    }

    /** All notes that people wrote, as one text. */
    String marks() {
        return String.join("; ", pickup.written());
    }
}
