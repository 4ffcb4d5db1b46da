package org.bookholder.app.home;

import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.view.settings.Display;

/** The monitors, which only the main thread may look at: {@link #work} is for it, the rest for several threads. */
final class DisplayList {
    private final Environment here;
    private final Latest<Boolean> wanted = new Latest<>(false);
    private final Latest<Known> known = new Latest<>(new Known(List.of(), ""));

    /**
     * What is known.
     *
     * @param displays the monitors; empty until somebody has asked
     * @param trouble why there is none; empty if there is one
     */
    record Known(List<Display> displays, String trouble) {}

    DisplayList(Environment here) {
        this.here = here;
    }

    /** Asks the main thread to look. */
    void look() {
        wanted.set(true);
    }

    Known known() {
        return known.get();
    }

    /** Looks, if somebody has asked. */
    void work() {
        if (!wanted.get()) {
            return;
        }
        wanted.set(false);
        try {
            known.set(new Known(here.equipment().displays(), ""));
        } catch (ProblemException e) {
            known.set(new Known(List.of(), e.what()));
        }
    }
}
