package org.bookholder.app.environment;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.session.Command;
import org.bookholder.session.SessionState;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ears;
import org.bookholder.view.settings.Display;
import org.bookholder.view.settings.WindowSettings;
import org.bookholder.view.settings.WindowWish;

/** Devices and parts on this machine: recogniser, microphones, windows, and hand-off files. */
public interface Equipment {
    /** Loads the recogniser's model. */
    Ears ears(Path model) throws ProblemException;

    /** The microphones' names. */
    List<String> microphones() throws ProblemException;

    /** Opens a microphone; the default one if no name is given. */
    AudioSource microphone(Optional<String> name, LongSupplier nanoTime) throws ProblemException;

    /** The same; its blocks keep both channels if it can give them. */
    default AudioSource microphoneWithSides(Optional<String> name, LongSupplier nanoTime) throws ProblemException {
        return microphone(name, nanoTime);
    }

    /**
     * The monitors on which a reading window can open. Main thread only.
     *
     * @throws ProblemException if there is no display
     */
    List<Display> displays() throws ProblemException;

    /**
     * Opens a reading window.
     *
     * @throws ProblemException if there is no display that can show one
     */
    Window window(WindowWish wish, Script script) throws ProblemException;

    /** Every kind of file that a hand-off can hold, in the order in which they are written. */
    List<HandOffPart> handOffParts();

    /**
     * Shows a folder in the system's own window of files.
     *
     * @throws ProblemException if there is no display or nothing that shows folders
     */
    void showFolder(Path folder) throws ProblemException;

    /** Whether the system's own dialog for files can be shown here. */
    boolean showsFileDialogs();

    /**
     * Lets somebody at this machine choose files or a folder in the system's own dialog, and waits until they have. For one thread at a
     * time, and not for the main thread.
     *
     * @return what was chosen; nothing if the dialog was closed
     */
    List<Path> choose(FileWish wish);

    /** Closes a dialog that is open, so that the thread that waits for it goes on. For any thread. */
    void closeFileDialogs();

    /** A reading window. Confined to the main thread. */
    interface Window extends AutoCloseable {
        /** Shows the session until the presenter closes the window or the program ends. */
        void run(
                Supplier<SessionState> state, Consumer<Command> commands, LongSupplier nanoTime, BooleanSupplier ended);

        /** Turns to another lesson: what it shows begins anew, with settings for that lesson; its place stays. */
        void turnTo(Script script, WindowSettings settings);

        /** The settings as the presenter has changed them. */
        WindowWish wish();

        @Override
        void close();
    }
}
