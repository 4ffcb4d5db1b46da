package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.app.desk.DeskRequest;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.desk.ServedSession;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.jspecify.annotations.Nullable;

/**
 * What lessons share that are read one after another: the recogniser, the reading window and the desk with its address. Each
 * is opened for the first lesson that wants it. Confined to the thread that reads.
 */
public final class SharedDevices implements AutoCloseable {
    private @Nullable OptionalEars ears;
    private @Nullable OptionalWindow window;
    private @Nullable RunningDesk desk;
    private @Nullable CurrentSession shown;

    /** The recogniser; loaded if {@code wanted} and not loaded yet. */
    OptionalEars ears(Environment here, Path model, boolean wanted) throws ProblemException {
        OptionalEars known = ears;
        if (known == null || (wanted && known.ears().isEmpty())) {
            known = OptionalEars.load(here, model, wanted);
            ears = known;
        }
        return known;
    }

    /** The window, turned to this lesson. */
    OptionalWindow window(Environment here, ReadingListener listener, ReadingRequest request, Script script) {
        OptionalWindow known = window;
        if (known == null) {
            known = OptionalWindow.open(here, listener, request, script);
            window = known;
        } else {
            known.turnTo(request, script);
        }
        return known;
    }

    /**
     * Shows a session at the desk.
     *
     * @param folder where the credentials of the desk are kept, if it is opened now
     * @return the desk if it was opened now; empty if it was open before
     */
    Optional<RunningDesk> desk(Environment here, DeskRequest request, Path folder, ServedSession session)
            throws ProblemException {
        CurrentSession known = shown;
        if (known != null) {
            known.show(session);
            return Optional.empty();
        }
        CurrentSession first = new CurrentSession(session);
        RunningDesk opened = RunningDesk.of(here, request, folder, first);
        desk = opened;
        shown = first;
        return Optional.of(opened);
    }

    /** How to open the desk; empty if it is for this machine only, or if there is none. */
    String invitation() {
        RunningDesk open = desk;
        return open == null ? "" : open.invitation();
    }

    @Override
    public void close() {
        close(window);
        close(desk);
        close(ears);
    }

    private static void close(@Nullable OptionalWindow open) {
        if (open != null) {
            open.close();
        }
    }

    private static void close(@Nullable RunningDesk open) {
        if (open != null) {
            open.close();
        }
    }

    private static void close(@Nullable OptionalEars open) {
        if (open != null) {
            open.close();
        }
    }
}
