package org.bookholder.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.Tapes;
import org.bookholder.runtime.source.Sources;
import org.bookholder.runtime.stage.ManualScheduler;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.Script;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ears;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.Folders;

/**
 * Lets the program read a recording, from the script's text to the settled session, with its journal and its tape on disk,
 * on the calling thread and in virtual time.
 */
final class ReadingRun {
    private static final String SOURCE = "composed.md";
    private static final int ENDLESS = Integer.MAX_VALUE;

    private ReadingRun() {}

    /**
     * What a session holds when it is over.
     *
     * @param state as the views show it
     * @param events as the journal kept them
     */
    record Ended(SessionState state, List<SessionEvent> events) {}

    /** Reads; {@code source} is closed afterwards. */
    static Ended read(String scriptText, AudioSource source, Ears ears) {
        Path folder = temporary();
        try (SessionFolder session = SessionFolder.create(folder.resolve("session"), new SessionLocks())) {
            Script script = ScriptReader.parse(scriptText, SOURCE, Format.MARKDOWN);
            PreparedScript prepared = ScriptPreparer.prepare(script, ears.vocabulary());
            SessionState before = Session.begin(script, FatigueLimits.defaults());
            FakeClock clock = new FakeClock();
            List<Throwable> failures = new ArrayList<>();
            ManualScheduler runner = new ManualScheduler(clock, fault -> failures.add(fault.cause()));
            Reading reading = Reading.begin(
                    new ReadingPlan(
                            prepared,
                            before,
                            new SessionEvent.Opened(before.now(), clock.instant(), script.title(), SOURCE, scriptText),
                            Optional.empty(),
                            ReadingPosition.START,
                            Conduct.PLAIN,
                            Optional.of(ears),
                            once(source),
                            source,
                            true,
                            session.journal(),
                            Tapes.in(session),
                            Optional.empty(),
                            new FaultLog(text -> {}, clock),
                            clock,
                            clock),
                    runner);
            runner.runUntilIdle(ENDLESS);
            if (!failures.isEmpty() || !reading.progress().over()) {
                throw new IllegalStateException("the reading was not read to its end: " + failures);
            }
            return new Ended(reading.state().get(), session.journal().events());
        } catch (ProblemException e) {
            throw new IllegalStateException(e);
        } finally {
            delete(folder);
        }
    }

    /** The sound of a file: one take. */
    private static Sources once(AudioSource source) {
        return new Sources() {
            @Override
            public AudioSource open() {
                return source;
            }

            @Override
            public boolean live() {
                return false;
            }
        };
    }

    private static Path temporary() {
        try {
            return Files.createTempDirectory("reading");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void delete(Path folder) {
        try {
            Folders.delete(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
