package org.bookholder.app.home;

import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Latest;

/** What should be right before a lesson is read: the microphone. Safe for use by several threads. */
final class BeforeReading {
    private final Environment here;
    private final HomeSettings settings;
    private final Latest<Known> known = new Latest<>(new Known(List.of(), "", ""));

    /**
     * What is known.
     *
     * @param microphones the names of the microphones
     * @param chosen the one to read with; empty for the machine's own choice
     * @param trouble what stands in the way; empty if nothing does
     */
    record Known(List<String> microphones, String chosen, String trouble) {}

    BeforeReading(Environment here, HomeSettings settings) {
        this.here = here;
        this.settings = settings;
    }

    Known known() {
        return known.get();
    }

    /** Looks which microphones there are. */
    synchronized void look() {
        String chosen = "";
        try {
            chosen = settings.microphone().orElse("");
            List<String> names = here.equipment().microphones();
            known.set(new Known(names, chosen, trouble(names, chosen)));
        } catch (ProblemException e) {
            known.set(new Known(List.of(), chosen, e.getMessage()));
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
