package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.reading.EditedScript;
import org.bookholder.app.reading.OptionalEars;
import org.bookholder.app.session.BreakLimits;
import org.bookholder.app.session.InterruptedSession;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.app.session.SessionFolders;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.ReadRightNotes;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.ReplayedSession;
import org.bookholder.runtime.record.Resumption;
import org.bookholder.runtime.record.Tapes;
import org.bookholder.runtime.source.Sources;
import org.bookholder.runtime.stage.Shutdown;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.session.AcceptedReading;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionState;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ears;

/** One session at the camera, from the script to the pickup list. */
final class Sitting {
    private final Environment here;
    private final Terminal terminal;
    private final ReadRequest request;
    private final Optional<Sources> given;

    Sitting(Environment here, Terminal terminal, ReadRequest request) {
        this(here, terminal, request, Optional.empty());
    }

    /** A sitting that hears what is given, in place of what the request asks for. */
    Sitting(Environment here, Terminal terminal, ReadRequest request, Optional<Sources> given) {
        this.here = here;
        this.terminal = terminal;
        this.request = request;
        this.given = given;
    }

    /** Reads; returns the exit status. What a user can put right is found out before a session is begun. */
    @SuppressWarnings("try") // Held and not asked: after Ctrl-C the program stays until the session's folder is closed.
    int run() throws ProblemException {
        ScriptFile lesson = ScriptFile.read(request.script());
        FatigueLimits limits = BreakLimits.of(here);
        int from = request.from().orElse(1);
        int last = lesson.script().lines().size();
        if (from < 1 || from > last) {
            throw new ProblemException(
                    "there is no line " + from, "--from", "give a line from 1 to " + last + ", the script's last");
        }
        Sources sources = given.isPresent() ? given.get() : new Inputs(here, terminal, request).sources();
        try (AudioSource first = sources.open();
                OptionalEars ears = OptionalEars.load(here, request.model(), sources.sounding())) {
            PreparedScript prepared = ScriptPreparer.prepare(lesson.script(), ears.vocabulary());
            detail("Listening to " + (sources.sounding() ? first.name() + ", " + first.rate() + " Hz" : "nothing"));
            detail("Speech model: " + request.model());
            detail("The script has " + last + " lines and " + lesson.script().spokenWords() + " words as spoken");
            UnknownWords.tell(prepared, sources.sounding(), terminal);
            try (Shutdown untilItIsClosed = Shutdown.onInterrupt(() -> {});
                    SessionFolder folder = open(lesson)) {
                return read(lesson, prepared, limits, folder, sources, first, ears.ears());
            }
        }
    }

    private void detail(String text) {
        if (request.verbose()) {
            terminal.out().println(text);
        }
    }

    private SessionFolder open(ScriptFile lesson) throws ProblemException {
        Optional<Path> last = SessionFolders.last(here.sessions(), here);
        Optional<Path> named = request.session();
        if (named.isEmpty() && !request.anew()) {
            named = last.filter(session -> InterruptedSession.of(session, lesson.text(), here.locks()));
            named.ifPresent(session -> terminal.out()
                    .println("The session that was broken off goes on in a new take; --new-session begins another."));
        }
        Path place = named.orElseGet(
                () -> SessionFolders.unused(here.sessions(), lesson.script().title(), here));
        SessionFolder folder = SessionFolder.isSession(place)
                ? SessionFolder.open(place, here.locks())
                : SessionFolder.create(place, here.locks());
        if (request.desk().isPresent()) {
            last.ifPresent(session -> RunningDesk.letIn(session, folder.path()));
        }
        terminal.out().println("Session: " + folder.path());
        return folder;
    }

    private int read(
            ScriptFile lesson,
            PreparedScript prepared,
            FatigueLimits limits,
            SessionFolder folder,
            Sources sources,
            AudioSource first,
            Optional<Ears> ears)
            throws ProblemException {
        int interrupted = ears.isPresent() ? new Recovery(here, terminal).settle(folder, ears.get()) : 0;
        if (interrupted != 0) {
            return interrupted;
        }
        ReplayedSession past = Resumption.of(folder, lesson.script(), lesson.text(), limits);
        SessionState before = past.state();
        folder.keepScript(lesson.script().source(), lesson.text());
        ReadingPosition from =
                request.from().map(line -> new ReadingPosition(line, 1)).orElseGet(() -> Resumption.next(before));
        try (OptionalWindow window = OptionalWindow.open(here, terminal, request, lesson.script())) {
            ReadingPlan plan = new ReadingPlan(
                    prepared,
                    before,
                    lesson.opened(before.now(), here.clock().instant()),
                    from,
                    ears,
                    sources,
                    first,
                    window.isEmpty() && !sources.live(),
                    folder.journal(),
                    Tapes.in(folder),
                    window.isEmpty() ? Optional.empty() : Optional.of(edited(folder, ears)),
                    FaultLog.in(folder.path(), here.clock()),
                    here.clock(),
                    here.nanoTime());
            try (Reading reading = Reading.start(plan);
                    OptionalDesk desk = OptionalDesk.open(here, terminal, request, folder, past.trail(), reading);
                    Watch watch = new Watch(reading, terminal, here)) {
                carry(before, folder, reading);
                boolean withoutWindow = window.isEmpty();
                window.run(reading, desk, watch::mustEnd);
                boolean inTerminal = withoutWindow || window.lost();
                watch.untilOver(inTerminal);
                return finish(reading, folder);
            }
        }
    }

    private EditedScript edited(SessionFolder folder, Optional<Ears> ears) {
        return new EditedScript(request.script(), new OptionalEars(ears).vocabulary(), folder);
    }

    /** A new session begins with what earlier ones of the course have taught about the recogniser. */
    private void carry(SessionState before, SessionFolder folder, Reading reading) {
        Path sessions = folder.path().toAbsolutePath().getParent();
        if (before.takes().all().isEmpty() && sessions != null) {
            String course = ReadRightNotes.courseOf(request.script());
            List<AcceptedReading> learned = ReadRightNotes.ofCourse(sessions, course);
            if (!learned.isEmpty()) {
                reading.tell(new NoteCommand.Add(new Remark.Carried(learned)));
            }
            keep(new ReadRightNotes(course, learned), folder);
        }
    }

    /** A disk that takes no notes is told of by the journal; this one is not worth a reading. */
    private void keep(ReadRightNotes notes, SessionFolder folder) {
        try {
            notes.keep(folder.path());
        } catch (ProblemException e) {
            detail(e.getMessage());
        }
    }

    private int finish(Reading reading, SessionFolder folder) {
        List<AcceptedReading> learned = reading.state().get().remarks().readRight();
        keep(new ReadRightNotes(ReadRightNotes.courseOf(request.script()), learned), folder);
        try {
            Installed.exporters().get(0).write(reading.state().get(), List.of(), terminal.out());
        } catch (IOException e) {
            terminal.err().println("bookholder: the list could not be printed: " + e.getMessage());
        }
        terminal.out().println();
        terminal.out().println("To see this list again: bookholder notes " + folder.path());
        terminal.out().println("To hear each attempt and decide: bookholder desk " + folder.path());
        terminal.out().flush();
        return Endings.status(reading, folder.path(), terminal);
    }
}
