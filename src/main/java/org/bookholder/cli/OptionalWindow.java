package org.bookholder.cli;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Equipment;
import org.bookholder.app.reading.WindowPreferences;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.script.model.Script;
import org.bookholder.session.TakeCommand;
import org.bookholder.view.settings.WindowWish;

/** The reading window, if one is wanted and there is a display that can show it. Confined to the main thread. */
final class OptionalWindow implements AutoCloseable {
    private final Environment here;
    private final Terminal terminal;
    private final ReadRequest request;
    private Optional<Equipment.Window> window;

    private OptionalWindow(
            Environment here, Terminal terminal, ReadRequest request, Optional<Equipment.Window> window) {
        this.here = here;
        this.terminal = terminal;
        this.request = request;
        this.window = window;
    }

    /** Opens it, or says why the reading goes on in the terminal. */
    static OptionalWindow open(Environment here, Terminal terminal, ReadRequest request, Script script) {
        Optional<Equipment.Window> window = Optional.empty();
        try {
            if (request.window().isPresent()) {
                window = Optional.of(here.equipment().window(request.window().get(), script));
            }
        } catch (ProblemException e) {
            terminal.err().println("bookholder: reading in the terminal, without a window: " + e.getMessage());
        }
        return new OptionalWindow(here, terminal, request, window);
    }

    boolean isEmpty() {
        return window.isEmpty();
    }

    /**
     * Shows the reading until the window is closed, then asks it to end; without a window does nothing.
     *
     * @param desk what the window invites to
     * @param ended whether the program is to end whatever the presenter does
     */
    void run(Reading reading, OptionalDesk desk, BooleanSupplier ended) {
        if (window.isPresent()) {
            window.get().run(desk.forWindow(reading.state()), reading::tell, here.nanoTime(), ended);
            keep(window.get().wish());
            close();
            reading.tell(new TakeCommand.Quit());
        }
    }

    /** Settings that cannot be kept are no reason to lose a reading. */
    private void keep(WindowWish closed) {
        try {
            if (request.window().isPresent()) {
                WindowPreferences.of(here, request.script())
                        .keep(request.window().get(), closed);
            }
        } catch (ProblemException e) {
            terminal.err().println("bookholder: " + e.getMessage());
        }
    }

    @Override
    public void close() {
        Optional<Equipment.Window> open = window;
        window = Optional.empty();
        open.ifPresent(Equipment.Window::close);
    }
}
