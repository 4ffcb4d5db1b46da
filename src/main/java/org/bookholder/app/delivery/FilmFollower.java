package org.bookholder.app.delivery;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.footage.FilmSources;
import org.bookholder.app.session.CourseHabits;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.files.RunFolder;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.footage.Footage;
import org.bookholder.footage.WholeRecording;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.Tapes;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.session.Session;
import org.bookholder.session.SessionState;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ears;

/**
 * Follows a film's sound against a script as if it were a take, on its own threads. The session lies in a temporary
 * folder, which is deleted on close.
 */
public final class FilmFollower implements AutoCloseable {
    private final RunFolder place;
    private final SessionFolder folder;
    private final Reading reading;

    private FilmFollower(RunFolder place, SessionFolder folder, Reading reading) {
        this.place = place;
        this.folder = folder;
        this.reading = reading;
    }

    /** Starts following; the ears are not closed. */
    public static FilmFollower start(Environment here, Path film, ScriptFile lesson, Ears ears)
            throws ProblemException {
        Footage footage = FootageFile.look(film);
        FilmSources sources =
                new FilmSources(WholeRecording.of(footage), here.clock().instant());
        AudioSource first = sources.open();
        RunFolder place = temporary();
        SessionFolder folder = SessionFolder.create(place.path().resolve("session"), here.locks());
        SessionState before = Session.begin(lesson.script(), FatigueLimits.defaults());
        ReadingPlan plan = new ReadingPlan(
                ScriptPreparer.prepare(
                        lesson.script(),
                        new CourseHabits(here).of(Path.of(lesson.script().source())),
                        ears.vocabulary()),
                before,
                lesson.opened(before.now(), here.clock().instant()),
                Optional.empty(),
                ReadingPosition.START,
                Conduct.PLAIN,
                Optional.of(ears),
                sources,
                first,
                true,
                folder.journal(),
                Tapes.in(folder),
                Optional.empty(),
                FaultLog.in(folder.path(), here.clock()),
                here.clock(),
                here.nanoTime());
        return new FilmFollower(place, folder, Reading.start(plan));
    }

    private static RunFolder temporary() throws ProblemException {
        try {
            return RunFolder.temporary();
        } catch (IOException e) {
            throw ProblemException.noTemporaryRoom(e);
        }
    }

    /** Waits for the end; returns whether it came within {@code millis}. */
    public boolean await(long millis) {
        return reading.await(millis);
    }

    /** Progress in seconds of the film: the position of the slower ear. */
    public double reached() {
        return reading.state().get().now().seconds()
                - reading.progress().behind().seconds();
    }

    /** The result; call it at the end. */
    public SessionState state() throws ProblemException {
        Optional<StageFault> fault = reading.firstFault();
        if (fault.isPresent()) {
            // A reading may continue without some stages, but a check that missed something would be wrong.
            throw new IllegalStateException(
                    "in the stage '" + fault.get().role() + "'", fault.get().cause());
        }
        if (!reading.progress().unsaved().isEmpty()) {
            throw new ProblemException(
                    reading.progress().unsaved(), place.path().toString(), "free some space there");
        }
        return reading.state().get();
    }

    @Override
    public void close() {
        reading.close();
        folder.close();
        try {
            place.close();
        } catch (IOException e) {
            // The next run deletes it.
        }
    }
}
