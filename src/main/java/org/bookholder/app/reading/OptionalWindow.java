package org.bookholder.app.reading;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Equipment;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.script.model.Script;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.view.DisplayLostException;
import org.bookholder.view.settings.WindowWish;

/** The reading window, if one is wanted and there is a display that can show it. Confined to the main thread. */
final class OptionalWindow implements AutoCloseable {
    private static final String ROLE = "window";
    private static final int REOPENINGS = 2;

    private final Environment here;
    private final ReadingListener listener;
    private ReadingRequest request;
    private Optional<Equipment.Window> window;
    private boolean lost;

    private OptionalWindow(
            Environment here, ReadingListener listener, ReadingRequest request, Optional<Equipment.Window> window) {
        this.here = here;
        this.listener = listener;
        this.request = request;
        this.window = window;
    }

    /** Opens the window, or reports why the reading continues without one. */
    static OptionalWindow open(Environment here, ReadingListener listener, ReadingRequest request, Script script) {
        OptionalWindow opened = new OptionalWindow(here, listener, request, Optional.empty());
        opened.open(script);
        return opened;
    }

    private void open(Script script) {
        try {
            if (request.window().isPresent()) {
                window = Optional.of(here.equipment().window(request.window().get(), script));
            }
        } catch (ProblemException e) {
            listener.warned("reading " + listener.withoutWindow() + ", without a window: " + e.getMessage());
        }
    }

    /** Turns an open window to another lesson. */
    void turnTo(ReadingRequest next, Script script) {
        request = next;
        window.ifPresent(open -> next.window().ifPresent(wish -> open.turnTo(script, wish.settings())));
    }

    boolean isEmpty() {
        return window.isEmpty();
    }

    /** Whether the window has failed for good. */
    boolean lost() {
        return lost;
    }

    /**
     * Shows the reading until the window is closed, then asks the reading to end; the window stays open if the reading has
     * ended so that the next lesson can be read. Does nothing if there is no window. A
     * window that fails is reopened, at most twice; after that, or if its display is gone, the reading continues without
     * one, and {@link #lost()} is true.
     *
     * @param states what the window shows
     * @param ended whether the program should end whatever the presenter does
     */
    void run(Reading reading, Supplier<SessionState> states, BooleanSupplier ended) {
        for (int faults = 0; window.isPresent(); faults++) {
            Equipment.Window shown = window.get();
            try {
                shown.run(states, reading::tell, here.nanoTime(), ended);
                keep(shown.wish());
                if (reading.nextLesson() && reading.progress().over()) {
                    return;
                }
                close();
                reading.tell(new TakeCommand.Quit());
                return;
            } catch (DisplayLostException gone) {
                close();
                lost = true;
                listener.warned("the display is gone; the reading goes on " + listener.withoutWindow() + ", and "
                        + listener.endedBy());
            } catch (RuntimeException fault) {
                closeAfter(fault);
                if (faults < REOPENINGS) {
                    reopenAfter(fault, reading.state().get().script());
                }
                tell(reading, fault);
            }
        }
    }

    private void closeAfter(RuntimeException fault) {
        try {
            close();
        } catch (RuntimeException another) {
            fault.addSuppressed(another);
        }
    }

    /** A window that cannot be opened again must not end the reading either. */
    private void reopenAfter(RuntimeException fault, Script script) {
        try {
            open(script);
        } catch (RuntimeException another) {
            fault.addSuppressed(another);
        }
    }

    private void tell(Reading reading, RuntimeException fault) {
        if (window.isEmpty()) {
            lost = true;
            reading.failed(new StageFault(ROLE, StageFault.Consequence.GIVEN_UP, fault));
        } else {
            reading.failed(new StageFault(ROLE, StageFault.Consequence.RESTARTS, fault));
            reading.recovered(ROLE);
            listener.warned("the window failed and was opened again; the reading goes on");
        }
    }

    /** Saves the settings; a failure must not end the reading. */
    private void keep(WindowWish closed) {
        try {
            if (request.window().isPresent()) {
                WindowPreferences.of(here, request.script())
                        .keep(request.window().get(), closed);
            }
        } catch (ProblemException e) {
            listener.warned(e.getMessage());
        }
    }

    @Override
    public void close() {
        Optional<Equipment.Window> open = window;
        window = Optional.empty();
        open.ifPresent(Equipment.Window::close);
    }
}
