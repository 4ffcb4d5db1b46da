package org.bookholder.runtime;

import java.util.Map;
import java.util.Optional;
import org.bookholder.runtime.record.JournalQueue;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.session.Trouble;

/** The trouble to show people after a fault in a stage. */
final class FaultTroubles {
    private record Kinds(Trouble.Kind restarts, Trouble.Kind givenUp) {}

    private static final Map<String, Kinds> OF_ROLE = Map.of(
            JournalQueue.ONE_NOTE,
            new Kinds(Trouble.Kind.ONE_NOT_SAVED, Trouble.Kind.ONE_NOT_SAVED),
            "script ear",
            new Kinds(Trouble.Kind.EAR_RESTARTS, Trouble.Kind.EAR_LOST),
            "open ear",
            new Kinds(Trouble.Kind.CHECK_RESTARTS, Trouble.Kind.CHECK_LOST),
            "desk",
            new Kinds(Trouble.Kind.DESK_RESTARTS, Trouble.Kind.DESK_LOST),
            "window",
            new Kinds(Trouble.Kind.WINDOW_RESTARTS, Trouble.Kind.WINDOW_LOST),
            "manuscript",
            new Kinds(Trouble.Kind.SCRIPT_NOT_WATCHED, Trouble.Kind.SCRIPT_NOT_WATCHED),
            "sound watch",
            new Kinds(Trouble.Kind.SOUND_NOT_WATCHED, Trouble.Kind.SOUND_NOT_WATCHED),
            "spoiled lines",
            new Kinds(Trouble.Kind.SOUND_NOT_WATCHED, Trouble.Kind.SOUND_NOT_WATCHED));

    private FaultTroubles() {}

    /** The trouble after a stage has failed while the session continues. */
    static Trouble of(StageFault fault) {
        Kinds kinds = OF_ROLE.get(fault.role());
        if (kinds == null) {
            return new Trouble(Trouble.Kind.PART_LOST, fault.role());
        }
        boolean restarts = fault.consequence() == StageFault.Consequence.RESTARTS;
        return new Trouble(restarts ? kinds.restarts() : kinds.givenUp(), "");
    }

    /** The trouble that ends when a stage has been restarted or given up. */
    static Optional<Trouble.Kind> mended(String role) {
        return Optional.ofNullable(OF_ROLE.get(role)).map(Kinds::restarts);
    }
}
