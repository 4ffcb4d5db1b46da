package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.bookholder.app.day.DayService;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.ProgressMeter;
import org.bookholder.app.environment.SpeechModels;
import org.bookholder.app.session.AcceptedReadingsStage;
import org.bookholder.app.session.BreakLimits;
import org.bookholder.app.session.CourseHabits;
import org.bookholder.app.session.HeardAs;
import org.bookholder.app.session.HeardAsKeeper;
import org.bookholder.app.session.InterruptedSession;
import org.bookholder.app.session.Overflows;
import org.bookholder.app.session.RecordingRoom;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.app.session.SecondPlace;
import org.bookholder.app.session.SessionFolders;
import org.bookholder.app.session.SessionSettler;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.pace.RunningTime;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.KeptElsewhere;
import org.bookholder.runtime.record.ReplayedSession;
import org.bookholder.runtime.record.Resumption;
import org.bookholder.runtime.record.Tapes;
import org.bookholder.runtime.source.Sources;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.runtime.stage.Workers;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.script.model.SpokenHabits;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.script.source.SpeakerChoice;
import org.bookholder.session.AcceptedReading;
import org.bookholder.session.DaySoFar;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ears;

/** Reads a lesson at the camera, from the script to the end of the session. */
public final class ReadingService {
    /** The thread that shows the reading, in the log of faults. */
    private static final String MAIN = "main thread";

    private final Environment here;
    private final ReadingRequest request;
    private final ReadingListener listener;
    private final ReadingControl control;
    /** Whether the sound is only recorded, because nothing hears the script's language. */
    private final boolean unheard;

    /** How the author says things: looked up once, before the microphone is opened. */
    private SpokenHabits habits = SpokenHabits.NONE;

    /** Creates a reading that reports to {@code listener} and is ended by {@code control}. */
    public ReadingService(Environment here, ReadingRequest request, ReadingListener listener, ReadingControl control) {
        this(here, request, listener, control, false);
    }

    private ReadingService(
            Environment here,
            ReadingRequest request,
            ReadingListener listener,
            ReadingControl control,
            boolean unheard) {
        this.unheard = unheard;
        this.here = here;
        this.request = request;
        this.listener = listener;
        this.control = control;
    }

    /** Runs the reading with the source of sound that the request asks for. */
    public ReadingResult read() throws ProblemException {
        try (SharedDevices shared = new SharedDevices()) {
            return read(shared, Optional.empty());
        }
    }

    /**
     * The same as one of several lessons.
     *
     * @param shared what the lessons share
     * @param next what follows this one; empty if there is no running order
     */
    ReadingResult read(SharedDevices shared, Optional<NextLessons> next) throws ProblemException {
        return read(Optional.empty(), shared, next);
    }

    /**
     * Runs the reading with the given source of sound. Everything that a user can fix is checked before a session
     * begins.
     *
     * @throws ProblemException if something prevents the reading; then no session was begun
     * @throws org.bookholder.app.environment.OperationInterrupted if it was interrupted before the reading began
     */
    public ReadingResult read(Sources given) throws ProblemException {
        try (SharedDevices shared = new SharedDevices()) {
            return read(Optional.of(given), shared, Optional.empty());
        }
    }

    private ReadingResult read(Optional<Sources> given, SharedDevices shared, Optional<NextLessons> next)
            throws ProblemException {
        ScriptFile lesson = ScriptFile.read(request.script(), speakers());
        ScriptSettings aim = paces().aimed(lesson.script(), request.script()).settings();
        FatigueLimits limits = BreakLimits.of(here);
        int from = request.from().orElse(1);
        int last = lesson.script().lines().size();
        if (from < 1 || from > last) {
            throw new ProblemException(
                    "there is no line " + from,
                    request.script().toString(),
                    "begin with a line from 1 to " + last + ", the script's last");
        }
        Sources sources = given.isPresent() ? given.get() : new AudioSelection(here, request, listener).sources();
        if (!unheard
                && sources.sounding()
                && request.window().isPresent()
                && SpeechModels.known(here, request.model(), lesson.script()).isEmpty()) {
            listener.warned(SpeechModels.advice(here, lesson.script())
                    + ". Until then the text moves steadily or by hand, and your voice is recorded, but not followed");
            return new ReadingService(here, request.steadily(), listener, control, true).read(given, shared, next);
        }
        boolean heard = sources.sounding() && !unheard;
        Path model = heard ? SpeechModels.forScript(here, request.model(), lesson.script()) : request.model();
        habits = new CourseHabits(here).of(request.script());
        try (AudioSource first = sources.open()) {
            OptionalEars ears = unheard ? new OptionalEars(Optional.empty()) : shared.ears(here, model, heard);
            PreparedScript prepared = ScriptPreparer.prepare(lesson.script(), habits, ears.vocabulary());
            listener.prepared(new ReadingSetup(
                    sources.sounding() ? Optional.of(first.name()) : Optional.empty(),
                    first.rate(),
                    model,
                    lesson.script(),
                    prepared));
            new Interruption(control::interrupted).check();
            try (SessionFolder folder = open(lesson)) {
                return read(lesson, aim, prepared, limits, folder, sources, first, ears.ears(), shared, next);
            }
        }
    }

    /** Those whose lines are read: a session that is gone on with keeps its own unless others are named. */
    private List<String> speakers() throws ProblemException {
        Optional<Path> session = request.session().filter(SessionFolder::isSession);
        if (session.isEmpty() || !request.speakers().isEmpty()) {
            return request.speakers();
        }
        try (SessionFolder folder = SessionFolder.openForReading(session.get())) {
            return Replay.lastText(folder.events())
                    .map(text -> SpeakerChoice.of(text).names())
                    .orElse(List.of());
        }
    }

    private SessionFolder open(ScriptFile lesson) throws ProblemException {
        Optional<Path> last = SessionFolders.last(here.sessions(), here);
        boolean free = request.session().isEmpty() && !request.anew();
        Optional<Path> continued = last.filter(session -> free && InterruptedSession.of(session, lesson, here.locks()));
        Path place = request.session()
                .or(() -> continued)
                .orElseGet(() ->
                        SessionFolders.unused(here.sessions(), lesson.script().title(), here));
        Overflows.takeIn(here, place).forEach(listener::warned);
        SessionFolder folder = SessionFolder.isSession(place)
                ? SessionFolder.open(place, here.locks())
                : SessionFolder.create(place, here.locks());
        try {
            if (request.desk().isPresent()) {
                last.ifPresent(session -> RunningDesk.letIn(session, folder.path()));
            }
            listener.opened(folder.path(), continued.isPresent());
            if (continued.isEmpty() && request.session().isEmpty() && (request.unpaced() || !request.anew())) {
                InterruptedSession.beside(folder.path(), lesson, here).ifPresent(listener::leftAside);
            }
            return folder;
        } catch (RuntimeException | ProblemException e) {
            folder.close();
            throw e;
        }
    }

    /** The paces for whoever reads. */
    private TargetPaces paces() {
        return new TargetPaces(here, presenter());
    }

    private ReadingResult read(
            ScriptFile lesson,
            ScriptSettings aim,
            PreparedScript prepared,
            FatigueLimits limits,
            SessionFolder folder,
            Sources sources,
            AudioSource first,
            Optional<Ears> ears,
            SharedDevices shared,
            Optional<NextLessons> next)
            throws ProblemException {
        if (ears.isPresent()) {
            recover(folder, ears.get());
            new Interruption(control::interrupted).check();
        }
        ReplayedSession past = past(lesson, limits, folder);
        folder.damage().ifPresent(here.warnings()::of);
        SessionState before = past.state();
        folder.keepScript(lesson.script().source(), lesson.text());
        Optional<DaySoFar> earlier = sources.live() ? earlier(folder, before, limits) : Optional.empty();
        ReadingPosition from =
                request.from().map(line -> new ReadingPosition(line, 1)).orElseGet(() -> Resumption.next(before));
        String space =
                sources.live() ? room(folder, first.rate(), lesson.script().with(aim), from) : "";
        SecondPlace second = new SecondPlace(here, folder);
        OptionalWindow window = shared.window(here, listener, request, lesson.script());
        ReadingPlan plan = new ReadingPlan(
                prepared,
                before,
                lesson.opened(before.now(), here.clock().instant()),
                earlier,
                from,
                request.conduct(),
                ears,
                sources,
                first,
                window.isEmpty() && !sources.live(),
                folder.journal(),
                Tapes.in(folder, second),
                window.isEmpty() ? Optional.empty() : Optional.of(edited(lesson, folder, ears)),
                FaultLog.in(folder.path(), here.clock()),
                here.clock(),
                here.nanoTime());
        Reading reading = Reading.start(plan);
        Supplier<SessionState> shown =
                next.map(left -> left.beside(reading.state(), here)).orElse(reading.state());
        try (reading;
                Workers keeping = new Workers(here.nanoTime(), reading);
                OptionalDesk desk =
                        OptionalDesk.open(here, listener, request, folder, past.trail(), reading, shown, shared)) {
            carry(before, folder, reading, keeping);
            aim(aim, before, reading);
            run(reading, window, shown, desk.forWindow(shown, space));
        } finally {
            if (reading.leftBehind()) {
                folder.leaveOpen();
            }
        }
        return finish(reading, folder, second);
    }

    private ReplayedSession past(ScriptFile lesson, FatigueLimits limits, SessionFolder folder)
            throws ProblemException {
        ReplayedSession past = Resumption.of(
                folder, lesson.script(), lesson.text(), limits, mended -> listener.warned(mended.sentence()));
        listener.goesOnFrom(past.state());
        boolean elsewhere = request.from().isPresent() && !request.conduct().pickups();
        return elsewhere ? Resumption.withoutRound(folder, past) : past;
    }

    /**
     * Shows the reading until it is over: in the window, and in the terminal if there is none or it was lost. An error on this thread
     * ends the session like a fault of a stage that it can't do without: the take is cut and settled first.
     */
    private void run(
            Reading reading, OptionalWindow window, Supplier<SessionState> shown, Supplier<SessionState> inWindow) {
        OwnPaceKeeper pace = new OwnPaceKeeper(paces(), reading.state(), listener::noted);
        ReadingMonitor monitor = new ReadingMonitor(reading, shown, listener, control, here.nanoTime(), pace);
        try {
            boolean withoutWindow = window.isEmpty();
            window.run(reading, inWindow, monitor::mustEnd);
            monitor.untilOver(withoutWindow || window.lost());
        } catch (Error fault) {
            reading.failed(new StageFault(MAIN, StageFault.Consequence.SESSION_ENDS, fault));
            monitor.untilOver(false);
        }
    }

    /** Tells how long a recording there is room for; returns the sentence for the window. */
    private String room(SessionFolder folder, int rate, Script script, ReadingPosition from) {
        Optional<RecordingRoom> room = RecordingRoom.in(folder.path(), rate);
        double needed = RunningTime.of(
                        script.lines().stream()
                                .filter(line -> line.number() >= from.line())
                                .mapToInt(ScriptLine::spokenWords)
                                .sum(),
                        script.settings().targetPace())
                .seconds();
        Optional<String> warning = room.flatMap(r -> r.warning(needed));
        warning.ifPresentOrElse(listener::warned, () -> room.ifPresent(r -> listener.room(r.sentence())));
        return warning.map(text -> "Careful: " + text + ".")
                .or(() -> room.map(RecordingRoom::sentence))
                .orElse("");
    }

    /** What the presenter has read today elsewhere; a recording that is heard again is nobody's reading of today. */
    private Optional<DaySoFar> earlier(SessionFolder folder, SessionState before, FatigueLimits limits) {
        DayService days = new DayService(here, presenter());
        try {
            Optional<DaySoFar> day = days.before(folder.path(), limits);
            days.opened(folder.path());
            return day.filter(d ->
                    before.day().map(own -> own.until().isBefore(d.until())).orElse(true));
        } catch (ProblemException e) {
            listener.warned("breaks are counted for this session alone (" + e.getMessage() + ")");
            return Optional.empty();
        }
    }

    /** First settles takes that were interrupted by a kill, so that the reading continues where they ended. */
    private void recover(SessionFolder folder, Ears ears) throws ProblemException {
        List<Integer> takes = SessionSettler.unsettled(folder);
        if (takes.isEmpty()) {
            return;
        }
        listener.recovering(takes);
        Interruption stop = new Interruption(control::interrupted);
        ProgressMeter meter = new ProgressMeter(here.nanoTime(), listener::progress);
        try {
            SessionSettler.settle(here, folder, ears, (take, heard, length) -> {
                        stop.check();
                        meter.reached(
                                "listening again to take " + take, heard.seconds() / Math.max(length.seconds(), 1));
                    })
                    .forEach(listener::warned);
        } catch (ProblemException e) {
            listener.warned(SessionSettler.failure(e));
        }
    }

    /** Begins at the pace that holds now; it may be another one than when the session was left. */
    private static void aim(ScriptSettings aim, SessionState before, Reading reading) {
        if (!aim.equals(before.script().settings())) {
            reading.tell(new TakeCommand.AimPace(aim.targetPace(), aim.paceSource()));
        }
    }

    private EditedScript edited(ScriptFile lesson, SessionFolder folder, Optional<Ears> ears) {
        List<String> speakers = SpeakerChoice.of(lesson.text()).names();
        return new EditedScript(request.script(), speakers, habits, new OptionalEars(ears).vocabulary(), folder);
    }

    /** Begins a new session with what is known of how its presenter is heard; from then on keeps what is decided in it. */
    private void carry(SessionState before, SessionFolder folder, Reading reading, Workers keeping) {
        if (request.audio().filter(here::isOfDemo).isPresent()) {
            return; // Nobody's voice.
        }
        if (before.takes().all().isEmpty()) {
            List<AcceptedReading> known = new HeardAs(here, presenter()).known();
            if (!known.isEmpty()) {
                reading.tell(new NoteCommand.Add(new Remark.Carried(known)));
            }
            try {
                HeardAsKeeper.begin(folder.path(), presenter());
            } catch (ProblemException e) {
                // A failure must not end the reading; the journal reports a disk that can't be written.
                listener.noted(e.getMessage());
            }
        }
        HeardAsKeeper heard = new HeardAsKeeper(here, folder.path());
        keeping.takeOn(new AcceptedReadingsStage(folder.path(), heard, reading.state()));
    }

    private String presenter() {
        return request.presenter().orElse(DayService.SOLE_PRESENTER);
    }

    private void keepSaid(SessionState state, SessionFolder folder) {
        try {
            CourseHabits.keep(folder.path(), state);
        } catch (ProblemException e) {
            listener.noted(e.getMessage());
        }
    }

    private ReadingResult finish(Reading reading, SessionFolder folder, SecondPlace second) {
        Optional<KeptElsewhere> rest = reading.keepElsewhere();
        boolean allIn = !reading.leftBehind() && second.takeIn();
        Optional<KeptElsewhere> kept = rest.filter(some -> !allIn);
        keepSaid(reading.state().get(), folder);
        return ReadingResult.of(reading, folder.path(), kept);
    }
}
