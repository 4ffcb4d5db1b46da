package org.bookholder.runtime.take;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.bookholder.follow.Follower;
import org.bookholder.follow.graph.ScriptGrammar;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.RecordedTake;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.runtime.record.SessionSound;
import org.bookholder.runtime.source.SilentSource;
import org.bookholder.runtime.stage.Crew;
import org.bookholder.runtime.stage.FaultListener;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Ears;
import org.bookholder.speech.Grammar;
import org.bookholder.timing.StreamTime;

/** Opens everything a take needs and gives its stages to the crew. Confined to the session's thread. */
public final class TakeStarter {
    /** A minute of live sound at 25 blocks per second; a file needs only enough to keep the ear busy. */
    private static final int LIVE_CAPACITY = 1500;

    private static final int FILE_CAPACITY = 64;

    private final ReadingPlan plan;
    private final SessionSound sound;
    private final Mailbox<Report> reports;
    private final Crew crew;
    private final FaultListener faults;
    private final Latest<Optional<TakeChannels>> newest = new Latest<>(Optional.empty());
    private PreparedScript script;
    private Optional<Grammar> grammar;
    private boolean firstUsed;

    /**
     * Creates a starter.
     *
     * @param sound where they are recorded
     * @param faults receives faults of parts that the stages can do without
     */
    public TakeStarter(ReadingPlan plan, SessionSound sound, Mailbox<Report> reports, Crew crew, FaultListener faults) {
        this.sound = sound;
        this.faults = faults;
        this.plan = plan;
        this.reports = reports;
        this.crew = crew;
        this.script = plan.script();
        this.grammar = ScriptGrammar.of(script);
    }

    /** Sets the script of takes started from now on. */
    public void use(PreparedScript changed) {
        script = changed;
        grammar = ScriptGrammar.of(script);
    }

    /**
     * Starts a take in any case: without a microphone it continues by hand, without a disk its sound waits in memory; the
     * recorder reports either.
     */
    public RunningTake start(int number, StreamTime start, ReadingPosition from, SessionRecorder ledger) {
        Opening opening = open();
        Instant when = plan.clock().instant();
        ledger.enter(new SessionEvent.TakeStarted(start, number, when, opening.name, from));
        if (!opening.trouble.isEmpty()) {
            ledger.enter(new SessionEvent.SourceLost(start, opening.trouble));
        }
        int rate = opening.source.rate();
        Optional<RecordedTake> recording =
                plan.sources().sounding() ? Optional.of(sound.begin(number, rate, start)) : Optional.empty();
        TakeChannels run =
                new TakeChannels(number, start, plan.sources().live() ? LIVE_CAPACITY : FILE_CAPACITY, reports);
        newest.set(Optional.of(run));
        Set<EarKind> listening = EnumSet.of(EarKind.SCRIPT);
        if (recording.isPresent() && plan.ears().isPresent()) {
            listening.add(EarKind.OPEN);
            run.openEarBegins();
        }
        SoundWatch watch = new SoundWatch(crew.optional("sound watch", faults));
        crew.takeOn(new CaptureStage(
                run, plan.sources(), opening.source, !opening.trouble.isEmpty(), recording, plan.nanoTime(), watch));
        Optional<Grammar> words = grammar;
        boolean inStep = !plan.sources().live();
        crew.takeOn(new ScriptEarStage(
                run,
                inStep,
                () -> plan.ears().flatMap(ears -> words.map(g -> ears.scriptEar(g, rate))),
                () -> crew.takeOn(new ScriptEarStage(run, false, Optional::empty, () -> {}))));
        recording.ifPresent(take -> crew.takeOn(new SyncStage(run, take, plan.nanoTime())));
        if (listening.contains(EarKind.OPEN)) {
            Ears ears = plan.ears().orElseThrow();
            // In step, the script ear waits for this one, which must then not wait for it.
            Supplier<StreamTime> behind = inStep ? () -> StreamTime.ZERO : this::behind;
            crew.takeOn(new OpenEarStage(run, recording.orElseThrow(), rate, behind, () -> ears.openEar(rate)));
        }
        EvidenceOrder order = new EvidenceOrder(inStep ? listening : Set.of());
        return new RunningTake(run, new Follower(script), order, when, listening);
    }

    /** How far the position is behind the sound in the newest take, which is the one that rolls. May be called on any thread. */
    private StreamTime behind() {
        return newest.get().map(TakeChannels::behind).orElse(StreamTime.ZERO);
    }

    /** Time of day at a take's end: by the clock, or for a file, which may be read at any speed, by its length. */
    public Instant endOf(RunningTake keeper) {
        if (plan.sources().live()) {
            return plan.clock().instant();
        }
        StreamTime length = keeper.end().since(keeper.run().start());
        return keeper.when().plus(Duration.ofNanos(Math.round(length.seconds() * 1e9)));
    }

    private Opening open() {
        if (!firstUsed) {
            firstUsed = true;
            return new Opening(plan.first(), plan.first().name(), "");
        }
        try {
            AudioSource source = plan.sources().open();
            return new Opening(source, source.name(), "");
        } catch (ProblemException e) {
            return new Opening(
                    new SilentSource(plan.first().rate(), plan.nanoTime()),
                    plan.first().name(),
                    e.getMessage());
        }
    }

    /** A source, its name, and why silence replaces a device; empty if it does not. */
    private record Opening(AudioSource source, String name, String trouble) {}
}
