package org.bookholder.cli;

import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.bookholder.app.environment.Equipment;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.CallThread;
import org.bookholder.script.model.Script;
import org.bookholder.session.Command;
import org.bookholder.session.SessionState;
import org.bookholder.view.DisplayLostException;
import org.bookholder.view.gl.Displays;
import org.bookholder.view.gl.ReadingWindow;
import org.bookholder.view.settings.Display;
import org.bookholder.view.settings.WindowSettings;
import org.bookholder.view.settings.WindowWish;

/**
 * The real windows. On Linux a thread of its own shows them while the main thread waits, so that the reading goes on when an X server
 * is gone: the call that finds that out never returns, because the graphics driver would draw on without the server's answer and
 * crash. Elsewhere the system lets only the main thread show windows, and nothing is given up.
 */
final class WindowsOfMachine {
    private final CallThread own = new CallThread("window", DisplayLostException::new);

    /** The monitors that are connected now. */
    List<Display> displays() throws ProblemException {
        return find(() -> Displays.all(this::abandon));
    }

    /** Opens a window. */
    Equipment.Window open(WindowWish wish, Script script) throws ProblemException {
        return new Shown(find(() -> ReadingWindow.open(wish.settings(), script, wish.place(), this::abandon)));
    }

    private <T> T find(CallThread.Call<T, ProblemException> call) throws ProblemException {
        try {
            return call(call);
        } catch (DisplayLostException e) {
            throw Displays.gone();
        }
    }

    private <T, E extends Exception> T call(CallThread.Call<T, E> call) throws E {
        return Displays.onAnyThread() ? own.call(call) : call.make();
    }

    private void run(Runnable work) {
        call(() -> {
            work.run();
            return true;
        });
    }

    private void abandon() {
        if (Displays.onAnyThread()) {
            own.giveUp();
        }
    }

    private final class Shown implements Equipment.Window {
        private final ReadingWindow window;

        Shown(ReadingWindow window) {
            this.window = window;
        }

        @Override
        public void run(
                Supplier<SessionState> state,
                Consumer<Command> commands,
                LongSupplier nanoTime,
                BooleanSupplier ended) {
            WindowsOfMachine.this.run(() -> window.run(state, commands, nanoTime, ended));
        }

        @Override
        public void turnTo(Script script, WindowSettings settings) {
            unlessLost(() -> window.turnTo(script, settings));
        }

        @Override
        public WindowWish wish() {
            return call(() -> new WindowWish(window.settings(), window.place()));
        }

        @Override
        public void close() {
            unlessLost(window::close);
        }

        /** If the display is gone, there is nothing to do: {@link #run} says so, and what the window held ends with the program. */
        private void unlessLost(Runnable work) {
            try {
                WindowsOfMachine.this.run(work);
            } catch (DisplayLostException gone) {
                // See above.
            }
        }
    }
}
