package org.bookholder.runtime.take;

import java.util.Optional;
import java.util.function.LongSupplier;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.RecordedTake;
import org.bookholder.runtime.source.SilentSource;
import org.bookholder.runtime.source.Sources;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.sound.Spoil;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.FrameMeter;
import org.bookholder.speech.SoundLevel;
import org.bookholder.timing.StreamTime;

/**
 * Captures a take's sound: measures it, records it, and passes it to the script ear. Never waits if the sound is live;
 * if it is a file, waits while the script ear is busy.
 */
final class CaptureStage implements Stage, AudioRead.Reader {
    /** Rounding errors of unusual sample rates are well below this; real losses are far longer. */
    private static final StreamTime GAP = StreamTime.ofSeconds(0.002);

    private static final long RETRY_NANOS = 2_000_000_000L;

    private final TakeChannels run;
    private final Sources sources;
    private final Optional<RecordedTake> recording;
    private final Optional<SavingReports> saving;
    private final LongSupplier nanoTime;
    private final int rate;
    private final FrameMeter frames = FrameMeter.voiceBand();
    private final SoundWatch watch;
    private final Lateness lateness;
    private AudioSource source;
    private StreamTime offset;
    private StreamTime position;
    private String meant;
    private String heard;
    private boolean lost;
    private StreamTime lostSince;
    private long lastTry;
    private boolean ended;

    /**
     * Creates the stage.
     *
     * @param source an open source; if {@code lost}, silence that replaces a device until one is found
     * @param recording the recording, if there is one
     */
    CaptureStage(
            TakeChannels run,
            Sources sources,
            AudioSource source,
            boolean lost,
            Optional<RecordedTake> recording,
            LongSupplier nanoTime,
            SoundWatch watch) {
        this.watch = watch;
        this.lost = lost;
        this.lastTry = nanoTime.getAsLong();
        this.run = run;
        this.sources = sources;
        this.source = source;
        this.recording = recording;
        this.saving = recording.map(take -> new SavingReports(run, take));
        this.nanoTime = nanoTime;
        this.rate = source.rate();
        this.meant = lost ? "" : source.name();
        this.heard = meant;
        this.offset = run.start();
        this.position = run.start();
        this.lostSince = run.start();
        this.lateness = new Lateness(run.start());
    }

    @Override
    public String role() {
        return "capture";
    }

    @Override
    public Criticality criticality() {
        return Criticality.ESSENTIAL;
    }

    @Override
    public int doWork() {
        Optional<TakeEnd> cut = run.cutReason();
        if (cut.isPresent()) {
            return end(cut.get());
        }
        if (!sources.live() && run.ear().full()) {
            return 0;
        }
        if (lost) {
            lookForSource();
        } else if (sources.live()) {
            lookWhichSource();
        }
        tellOfSaving();
        return source.read().to(this);
    }

    @Override
    public int samples(AudioBlock fromSource) {
        AudioBlock block = fromSource.later(offset);
        if (GAP.isBefore(block.start().since(position))) {
            tell(new SessionEvent.SamplesLost(block.start(), block.start().since(position)));
            spoiled(new Spoil(position, block.start(), Spoil.Kind.DROPOUT));
        }
        position = StreamTime.max(position, block.end());
        recording.ifPresent(take -> take.append(block));
        Optional<FrameLevels> levels = frames.hear(block);
        hand(block, levels);
        if (!lost) {
            watch.spoiled(block).forEach(this::spoiled);
        }
        for (SoundLevel level : watch.levels(block)) {
            tell(new SessionEvent.SoundMeasured(level.end(), level.rms(), level.peak(), level.clipped()));
        }
        run.captured(position);
        if (sources.live() && sources.sounding() && lateness.changed(position, run.behind())) {
            boolean late = lateness.late();
            run.reports().add(session -> session.takes().late(run.number(), late));
        }
        return 1;
    }

    @Override
    public int ended() {
        return end(TakeEnd.SOURCE_ENDED);
    }

    @Override
    public int gone(String reason) {
        tell(new SessionEvent.SourceLost(position, reason));
        source.close();
        lost = true;
        lostSince = position;
        lastTry = nanoTime.getAsLong();
        use(new SilentSource(rate, nanoTime));
        return 1;
    }

    @Override
    public void onClose() {
        source.close();
        if (!ended) {
            end(TakeEnd.CAPTURE_FAILED);
        }
    }

    /** Looks for a device. Meanwhile silence keeps the session's time running. */
    private void lookForSource() {
        if (nanoTime.getAsLong() - lastTry < RETRY_NANOS) {
            return;
        }
        lastTry = nanoTime.getAsLong();
        try {
            Optional<AudioSource> same = sources.again(meant);
            AudioSource found = same.isPresent() ? same.get() : sources.open();
            if (!fits(found)) {
                return;
            }
            use(found);
            found();
            heard = found.name();
            meant = meant.isEmpty() ? heard : meant;
            tell(new SessionEvent.SourceFound(position, heard));
            if (!heard.equals(meant)) {
                tell(new SessionEvent.SourceMoved(position, heard, meant));
            }
        } catch (ProblemException stillNone) {
            lost = true;
        }
    }

    /** Says so if the system has moved the stream to another device, and takes the one that was meant when it is back. */
    private void lookWhichSource() {
        if (!source.name().equals(heard)) {
            heard = source.name();
            tell(
                    heard.equals(meant)
                            ? new SessionEvent.SourceFound(position, heard)
                            : new SessionEvent.SourceMoved(position, heard, meant));
            lastTry = nanoTime.getAsLong();
        }
        if (!heard.equals(meant) && nanoTime.getAsLong() - lastTry >= RETRY_NANOS) {
            lastTry = nanoTime.getAsLong();
            takeBack();
        }
    }

    private void takeBack() {
        try {
            Optional<AudioSource> there = sources.again(meant);
            if (there.isPresent() && fits(there.get())) {
                source.close();
                use(there.get());
                heard = meant;
                tell(new SessionEvent.SourceFound(position, meant));
            }
        } catch (ProblemException notYet) {
            // It is listed and cannot be opened yet; the other one goes on.
            lastTry = nanoTime.getAsLong();
        }
    }

    /** Whether a source that was opened has the rate of this take; otherwise it is closed again. */
    private boolean fits(AudioSource found) {
        if (found.rate() != rate) {
            found.close();
            return false;
        }
        return true;
    }

    /** Reports the silence until now as lost sound. */
    private void found() {
        lost = false;
        spoiled(new Spoil(lostSince, position, Spoil.Kind.DROPOUT));
    }

    private void use(AudioSource next) {
        source = next;
        offset = position;
    }

    private void tellOfSaving() {
        saving.ifPresent(reports -> reports.tell(position, this::tell));
    }

    private void hand(AudioBlock block, Optional<FrameLevels> levels) {
        EarInput input = stage -> stage.hear(block, levels);
        if (!sources.live()) {
            run.ear().add(input);
        } else if (!run.ear().offer(input)) {
            StreamTime length = block.end().since(block.start());
            run.reports().add(session -> session.takes().unheard(length));
        }
    }

    private void tell(SessionEvent event) {
        run.ear().add(stage -> stage.pass(event));
    }

    private void spoiled(Spoil spoil) {
        run.reports().add(session -> session.takes().spoiled(run.number(), spoil));
    }

    private void endRecording() {
        recording.ifPresent(RecordedTake::finish);
        tellOfSaving();
        run.tapeEnds();
    }

    private int end(TakeEnd reason) {
        ended = true;
        if (lost) {
            found();
        }
        endRecording();
        StreamTime at = position;
        run.ear().add(stage -> stage.finish());
        run.reports().add(session -> session.takes().captureEnded(run.number(), at, reason));
        return -1;
    }
}
