package org.bookholder.cli;

import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.script.Script;
import org.bookholder.session.Command;

/** The reading window, if one is wanted and there is a display that can show it. */
record OptionalWindow(Optional<Equipment.Window> window, Surroundings here) implements AutoCloseable {
    /** Opens it, or says why the reading goes on in the terminal. */
    static OptionalWindow open(Surroundings here, Terminal terminal, ReadRequest request, Script script) {
        if (request.window().isEmpty()) {
            return new OptionalWindow(Optional.empty(), here);
        }
        try {
            return new OptionalWindow(
                    Optional.of(here.equipment().window(request.window().get(), script)), here);
        } catch (ProblemException e) {
            terminal.err().println("bookholder: reading in the terminal, without a window: " + e.getMessage());
            return new OptionalWindow(Optional.empty(), here);
        }
    }

    boolean isEmpty() {
        return window.isEmpty();
    }

    /** Shows the reading until the window is closed, then asks it to end; without a window does nothing. */
    void run(Reading reading) {
        window.ifPresent(open -> {
            open.run(reading.state(), reading::tell, here.nanoTime());
            open.close();
            reading.tell(new Command.Quit());
        });
    }

    @Override
    public void close() {
        window.ifPresent(Equipment.Window::close);
    }
}
