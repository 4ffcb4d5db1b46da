package org.bookholder.app.home;

import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.RecordingRoom;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Latest;

/** What should be right before a lesson is read: the microphone, and room on the disk. Safe for use by several threads. */
final class BeforeReading {
    /** What most microphones give, in samples a second. */
    private static final int RATE = 48_000;

    private final Environment here;
    private final HomeSettings settings;
    private final Latest<Known> known = new Latest<>(new Known(List.of(), "", "", false, ""));

    /**
     * What is known.
     *
     * @param microphones the names of the microphones
     * @param chosen the one to read with; empty for the machine's own choice
     * @param room how long a recording the disk of the sessions has room for, one sentence; empty if it does not tell
     * @param scarce whether that is little
     * @param trouble what stands in the way; empty if nothing does
     */
    record Known(List<String> microphones, String chosen, String room, boolean scarce, String trouble) {}

    BeforeReading(Environment here, HomeSettings settings) {
        this.here = here;
        this.settings = settings;
    }

    Known known() {
        return known.get();
    }

    /** Looks which microphones there are, and how much room. */
    synchronized void look() {
        String chosen = "";
        Optional<RecordingRoom> room = RecordingRoom.in(here.sessions(), RATE);
        String sentence = room.map(RecordingRoom::sentence).orElse("");
        boolean scarce = room.filter(RecordingRoom::scarce).isPresent();
        try {
            chosen = settings.microphone().orElse("");
            List<String> names = here.equipment().microphones();
            known.set(new Known(names, chosen, sentence, scarce, trouble(names, chosen)));
        } catch (ProblemException e) {
            known.set(new Known(List.of(), chosen, sentence, scarce, e.getMessage()));
        }
    }

    private static String trouble(List<String> names, String chosen) {
        if (names.isEmpty()) {
            return "No microphone was found. Plug one in.";
        }
        return chosen.isEmpty() || names.contains(chosen)
                ? ""
                : "The microphone you chose is not there. Plug it in, or choose another one.";
    }
}
