package org.bookholder.runtime.take;

import java.util.Optional;
import java.util.function.Supplier;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.RecordedTake;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.Ear;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/**
 * Feeds the open ear from the take's recording, so that it may fall behind by any length in bounded memory, and catches
 * up when the take is over. It leaves the machine to the script ear of the take that rolls as soon as the position there falls
 * behind, whichever take it listens to itself. After a fault, a new ear continues after the block at which the one before failed.
 */
final class OpenEarStage implements Stage {
    private static final int BLOCKS_PER_SECOND = 10;

    /** Above what blocks and threads take, below what a person sees. */
    private static final StreamTime YIELDS = StreamTime.ofSeconds(0.2);

    private final TakeChannels run;
    private final RecordedTake recording;
    private final int samples;
    private final Supplier<StreamTime> behind;
    private final Supplier<Ear> maker;
    private @Nullable Ear ear;
    private boolean working;

    /**
     * Creates the stage.
     *
     * @param behind how far the position in the take that rolls is behind the sound
     */
    OpenEarStage(TakeChannels run, RecordedTake recording, int rate, Supplier<StreamTime> behind, Supplier<Ear> maker) {
        this.behind = behind;
        this.run = run;
        this.recording = recording;
        this.samples = rate / BLOCKS_PER_SECOND;
        this.maker = maker;
    }

    @Override
    public String role() {
        return "open ear";
    }

    @Override
    public Criticality criticality() {
        return Criticality.RESTARTABLE;
    }

    @Override
    public void onStart() {
        working = true;
        ear = maker.get();
        working = false;
    }

    @Override
    public int doWork() throws ProblemException {
        working = true;
        int done = step();
        working = false;
        return done;
    }

    private int step() throws ProblemException {
        if (run.reports().full() || (!run.hurried() && YIELDS.isBefore(behind.get()))) {
            return 0;
        }
        // Checked before reading, so that everything written before the recording ended is read.
        boolean last = run.tapeEnded();
        Optional<AudioBlock> block = run.hurried() ? Optional.empty() : recording.read(samples);
        if (block.isPresent()) {
            hear(block.get());
            return 1;
        }
        return last || run.hurried() ? finish() : 0;
    }

    @Override
    public void onClose() {
        if (ear != null) {
            ear.close();
            ear = null;
        }
        // Otherwise the start or a step failed; reading continues when the stage is restarted.
        if (!working) {
            recording.closeReader();
        }
        working = false;
    }

    @Override
    public void onGivenUp() {
        recording.closeReader();
        end();
    }

    private void hear(AudioBlock block) {
        if (ear != null) {
            ear.hear(block).forEach(this::report);
        }
        run.heardByOpenEar(block.end());
        run.reports().add(session -> session.takes().heardTo(run.number(), EarKind.OPEN, block.end()));
    }

    private int finish() {
        if (ear != null) {
            ear.finish().forEach(this::report);
        }
        end();
        return -1;
    }

    private void end() {
        run.openEarEnds();
        run.reports().add(session -> session.takes().earDone(run.number(), EarKind.OPEN));
    }

    private void report(Hypothesis hypothesis) {
        run.reports().add(session -> session.takes().heard(run.number(), hypothesis));
    }
}
