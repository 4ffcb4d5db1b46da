package org.bookholder.runtime.take;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.Ear;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.Hypothesis;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/**
 * Feeds the script ear, and passes on levels and the reports of ear and capture in order of time.
 *
 * <p>Live, it waits for nothing. With a file, it keeps in step with the open ear, as both would be live, so that
 * following does not depend on how fast the file is read.
 */
final class ScriptEarStage implements Stage {
    /** How far the script ear may be ahead of the open ear when they keep in step. */
    private static final StreamTime AHEAD = StreamTime.ofSeconds(0.2);

    private final TakeChannels run;
    private final boolean inStep;
    private StreamTime heardTo = StreamTime.ZERO;
    private StreamTime settledTo;
    private StreamTime deafTo = StreamTime.ZERO;
    private final Supplier<Optional<Ear>> maker;
    private final Runnable goOnDeaf;
    private @Nullable Ear ear;
    private boolean started;
    private boolean finished;

    /**
     * Creates the stage.
     *
     * @param inStep whether to keep in step with the open ear
     * @param maker creates the ear on the stage's own thread; empty if the recogniser knows no word of the script
     * @param goOnDeaf starts a stage that passes input on without an ear, when this one is given up
     */
    ScriptEarStage(TakeChannels run, boolean inStep, Supplier<Optional<Ear>> maker, Runnable goOnDeaf) {
        this.goOnDeaf = goOnDeaf;
        this.settledTo = run.start();
        this.run = run;
        this.inStep = inStep;
        this.maker = maker;
    }

    @Override
    public String role() {
        return "script ear";
    }

    @Override
    public Criticality criticality() {
        return Criticality.RESTARTABLE;
    }

    /** After a fault, continues with the current sound; what arrived meanwhile is passed on unheard. */
    @Override
    public void onStart() {
        if (started) {
            deafTo = run.captured();
            tellDeafStretch();
        }
        started = true;
        ear = maker.get().orElse(null);
    }

    @Override
    public int doWork() {
        if (run.reports().full() || (inStep && run.openEarIsBehind(heardTo.since(AHEAD)))) {
            return 0;
        }
        EarInput input = run.ear().poll();
        if (input == null) {
            return 0;
        }
        input.to(this);
        return finished ? -1 : 1;
    }

    @Override
    public void onClose() {
        if (ear != null) {
            ear.close();
            ear = null;
        }
    }

    @Override
    public void onGivenUp() {
        deafTo = run.captured();
        tellDeafStretch();
        goOnDeaf.run();
    }

    private void tellDeafStretch() {
        StreamTime from = settledTo;
        StreamTime to = deafTo;
        settledTo = to;
        run.reports().add(session -> session.takes().notHeard(run.number(), from, to));
    }

    void hear(AudioBlock block, Optional<FrameLevels> measured) {
        heardTo = block.end();
        measured.ifPresent(levels ->
                run.reports().add(session -> session.takes().heard(run.number(), levels)));
        if (ear != null && deafTo.isBefore(block.end())) {
            report(ear.hear(block));
        }
        run.reports().add(session -> session.takes().heardTo(run.number(), EarKind.SCRIPT, block.end()));
    }

    void pass(SessionEvent event) {
        run.reports().add(session -> session.takes().happened(event));
    }

    void finish() {
        if (ear != null) {
            report(ear.finish());
        }
        finished = true;
        run.reports().add(session -> session.takes().earDone(run.number(), EarKind.SCRIPT));
    }

    private void report(List<Hypothesis> hypotheses) {
        for (Hypothesis hypothesis : hypotheses) {
            if (hypothesis instanceof Hypothesis.Final utterance) {
                settledTo = utterance.end();
            }
            run.reports().add(session -> session.takes().heard(run.number(), hypothesis));
        }
    }
}
