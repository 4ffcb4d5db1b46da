package org.bookholder.testing;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Equipment;
import org.bookholder.app.environment.Warnings;
import org.bookholder.handoff.ExampleSession;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Helpers;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.session.SessionEvent;

/** Sessions on disk in which everything happened, with a tone for a recording. */
public final class StoredExamples {
    private static final int RATE = 16_000;
    private static final double SECONDS = 18;

    private StoredExamples() {}

    /** A machine on which everything lies in one folder. */
    public static Environment here(Path folder) {
        return here(folder, new FakeEquipment());
    }

    /** The same with the devices of {@code equipment}. */
    public static Environment here(Path folder, Equipment equipment) {
        return new Environment(
                Instant::now,
                System::nanoTime,
                ZoneOffset.UTC,
                folder,
                folder,
                folder,
                new SessionLocks(),
                new Warnings(line -> {}),
                new Helpers(1),
                equipment);
    }

    /** The text of the script that they were read from. */
    public static String script() {
        return script("A lesson");
    }

    /** The same words under another title. */
    public static String script(String title) {
        StringBuilder text = new StringBuilder("---\ntitle: " + title + "\n---\n");
        ExampleSession.state().script().lines().stream()
                .map(ScriptLine::text)
                .forEach(line -> text.append(line).append('\n'));
        return text.toString();
    }

    /**
     * Writes one.
     *
     * @param source the script's file
     */
    public static void write(Path place, String source) throws ProblemException {
        write(place, source, script());
    }

    /** The same of another text with the same words. */
    public static void write(Path place, String source, String text) throws ProblemException {
        try (SessionFolder session = SessionFolder.create(place, new SessionLocks())) {
            for (SessionEvent event : ExampleSession.events()) {
                session.journal()
                        .append(
                                event instanceof SessionEvent.Opened o
                                        ? new SessionEvent.Opened(o.at(), o.when(), o.title(), source, text)
                                        : event);
            }
        }
        Wav.write(place.resolve("take-001.wav"), RATE, Wav.sine(300, 0.2, RATE, SECONDS));
    }
}
