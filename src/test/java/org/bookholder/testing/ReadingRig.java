package org.bookholder.testing;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.Tape;
import org.bookholder.runtime.record.Tapes;
import org.bookholder.runtime.source.Manuscript;
import org.bookholder.runtime.source.Sources;
import org.bookholder.runtime.stage.Crew;
import org.bookholder.runtime.stage.FaultListener;
import org.bookholder.runtime.stage.ManualScheduler;
import org.bookholder.runtime.stage.OptionalWork;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.script.model.Script;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ears;
import org.bookholder.speech.Hypothesis;
import org.bookholder.timing.StreamTime;

/** A reading whose stages are driven by hand in virtual time. */
public final class ReadingRig implements Sources {
    public static final int RATE = 16_000;
    /** What the script's file is said to hold at first. */
    public static final String TEXT = "text";

    private static final int STEP_MILLIS = 20;

    public final FakeClock clock = new FakeClock();
    public final FakeJournal journal = new FakeJournal();
    public final Map<Integer, FakeTape> tapes = new TreeMap<>();
    public final List<Throwable> failures = new ArrayList<>();
    private final Ears ears;
    private final Script script;
    private final Deque<AudioSource> more = new ArrayDeque<>();
    private final boolean live;
    private boolean sounding = true;
    private Optional<Manuscript> manuscript = Optional.empty();
    private Optional<SessionState> earlier = Optional.empty();
    private Conduct conduct = Conduct.PLAIN;
    private Optional<Reading> reading = Optional.empty();
    private final ManualScheduler runner = new ManualScheduler(clock, new Faults());
    private final Map<String, Slow> slow = new HashMap<>();
    private final Map<String, Planted> planted = new HashMap<>();
    private Journal saved = journal;
    private Tapes recordings = this::tape;
    private final List<Stage> others = new ArrayList<>();
    private final StringBuilder log = new StringBuilder();

    public ReadingRig(Script script, List<Hypothesis> heard, boolean live) {
        this(script, new FakeEars(heard), live);
    }

    public ReadingRig(Script script, Ears ears, boolean live) {
        this.script = script;
        this.ears = ears;
        this.live = live;
    }

    /** Nobody is listened to: the text moves by hand or at a steady pace; to be said before the reading begins. */
    public void hasNoMicrophone() {
        sounding = false;
    }

    /** Another source, for a further take or after a loss. */
    public void alsoHas(AudioSource source) {
        more.add(source);
    }

    /** The script's file, whose text may change. */
    public void reads(Manuscript file) {
        manuscript = Optional.of(file);
    }

    /** The session as it was left; to be said before the reading begins. */
    public void goesOn(SessionState left) {
        earlier = Optional.of(left);
    }

    /** How takes are led; to be said before the reading begins. */
    public void conducts(Conduct how) {
        conduct = how;
    }

    /** Notes and sound go to disk, and not to {@link #journal} and {@link #tapes}; to be said before the reading begins. */
    public void savesIn(Journal disk, Tapes sound) {
        saved = disk;
        recordings = sound;
    }

    public Reading begin(AudioSource first) {
        SessionState before = earlier.orElseGet(() -> Session.begin(script, FatigueLimits.defaults()));
        ReadingPlan plan = new ReadingPlan(
                ScriptPreparer.prepare(script, ears.vocabulary()),
                before,
                new SessionEvent.Opened(before.now(), clock.instant(), script.title(), script.source(), TEXT),
                Optional.empty(),
                ReadingPosition.START,
                conduct,
                Optional.of(ears),
                this,
                first,
                !live,
                saved,
                recordings,
                manuscript,
                new FaultLog(log::append, clock),
                clock,
                clock);
        Reading begun = Reading.begin(plan, new PlantingCrew());
        reading = Optional.of(begun);
        others.forEach(this::takeOn);
        return begun;
    }

    /** Each step of the stage takes so long, as if it waited for a slow device; to be said before the reading begins. */
    public void takesLong(String role, Duration step) {
        slow.put(role, new Slow(step, Long.MAX_VALUE));
    }

    /** The same until so many seconds have passed. */
    public void takesLong(String role, Duration step, double until) {
        slow.put(role, new Slow(step, clock.getAsLong() + Math.round(until * 1e9)));
    }

    private record Slow(Duration step, long until) {}

    /**
     * A fault in the stage or the optional work, once it is so late; {@code times} faults in all, for optional work any
     * number. To be said before the reading begins.
     */
    public void plant(String role, double seconds, int times) {
        planted.put(role, new Planted(Math.round(seconds * 1e9), times));
    }

    private record Planted(long nanos, int times) {}

    private void takeOn(Stage given) {
        Planted fault = planted.remove(given.role());
        Stage stage = fault == null ? given : new FaultyStage(given, clock, fault.nanos(), fault.times());
        Slow how = slow.get(stage.role());
        if (how == null) {
            runner.takeOn(stage);
            return;
        }
        SlowStage slowly = new SlowStage(stage, how.step(), how.until(), clock);
        if (stage.role().equals("journal")) {
            journal.onAppend(() -> {
                if (!slowly.working()) {
                    throw new AssertionError("another stage than the journal's would wait for its disk");
                }
            });
        }
        runner.takeOn(slowly);
    }

    /** A stage beside those of the reading; to be said before the reading begins. */
    public void alsoRuns(Stage stage) {
        others.add(stage);
    }

    /** The reading that was begun. */
    public Reading reading() {
        return reading.orElseThrow();
    }

    /** Lets time pass, and everybody work as fast as they can. */
    public void pass(double seconds) {
        for (int i = 0; i < seconds * 1000 / STEP_MILLIS; i++) {
            runner.runUntilIdle(100_000);
            clock.passMillis(STEP_MILLIS);
        }
        runner.runUntilIdle(100_000);
    }

    public ManualScheduler runner() {
        return runner;
    }

    @Override
    public AudioSource open() throws ProblemException {
        AudioSource next = more.poll();
        if (next == null) {
            throw new ProblemException("there is no microphone", "microphone", "plug one in");
        }
        return next;
    }

    @Override
    public Optional<AudioSource> again(String name) {
        Optional<AudioSource> there =
                more.stream().filter(source -> source.name().equals(name)).findFirst();
        there.ifPresent(more::remove);
        return there;
    }

    @Override
    public boolean sounding() {
        return sounding;
    }

    @Override
    public boolean live() {
        return live;
    }

    private Tape tape(int take, int rate, StreamTime start) {
        return tapes.computeIfAbsent(take, t -> new FakeTape());
    }

    /** What the log of faults holds. */
    public String log() {
        return log.toString();
    }

    /** Gives stages and optional work to the runner, with the planted faults in them. */
    private final class PlantingCrew implements Crew {
        @Override
        public void takeOn(Stage stage) {
            ReadingRig.this.takeOn(stage);
        }

        @Override
        public OptionalWork optional(String role, FaultListener faults) {
            Planted fault = planted.remove(role);
            return fault == null ? new OptionalWork(role, faults) : new FaultyWork(role, faults, clock, fault.nanos());
        }
    }

    private final class Faults implements FaultListener {
        @Override
        public void failed(StageFault fault) {
            failures.add(fault.cause());
            reading.ifPresent(r -> r.failed(fault));
        }

        @Override
        public void recovered(String role) {
            reading.ifPresent(r -> r.recovered(role));
        }
    }
}
