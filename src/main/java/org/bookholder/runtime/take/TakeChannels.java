package org.bookholder.runtime.take;

import java.util.Optional;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.session.TakeEnd;
import org.bookholder.timing.StreamTime;

/** Shared by the stages of one running take: queues, positions and signals. Safe for use by several threads. */
public final class TakeChannels {
    private final int number;
    private final StreamTime start;
    private final Mailbox<EarInput> ear;
    private final Mailbox<Report> reports;
    private final Latest<Optional<TakeEnd>> cut = new Latest<>(Optional.empty());
    private final Latest<StreamTime> captured;
    private final Latest<StreamTime> followed;
    private final Latest<StreamTime> heardByOpenEar;
    private final Latest<Boolean> openEarListens = new Latest<>(false);
    private final Latest<Boolean> taped = new Latest<>(false);
    private final Latest<Boolean> hurried = new Latest<>(false);

    TakeChannels(int number, StreamTime start, int earCapacity, Mailbox<Report> reports) {
        this.number = number;
        this.start = start;
        this.ear = new Mailbox<>(earCapacity);
        this.reports = reports;
        this.captured = new Latest<>(start);
        this.followed = new Latest<>(start);
        this.heardByOpenEar = new Latest<>(start);
    }

    public int number() {
        return number;
    }

    /** Where the take's audio begins in the session's. */
    StreamTime start() {
        return start;
    }

    /** Queue from capture to script ear. */
    Mailbox<EarInput> ear() {
        return ear;
    }

    /** Queue to the session's stage. */
    Mailbox<Report> reports() {
        return reports;
    }

    /** Asks the capture to end. */
    public void cut(TakeEnd reason) {
        cut.set(Optional.of(reason));
    }

    /** The reason for the requested cut; empty if none was requested. */
    Optional<TakeEnd> cutReason() {
        return cut.get();
    }

    /** The audio captured so far. */
    public StreamTime captured() {
        return captured.get();
    }

    void captured(StreamTime to) {
        captured.set(to);
    }

    /** The position follows the audio up to here. */
    public void followed(StreamTime to) {
        followed.set(to);
    }

    /** How far the position is behind the audio captured. */
    StreamTime behind() {
        return captured.get().since(followed.get());
    }

    /** An open ear starts. */
    void openEarBegins() {
        openEarListens.set(true);
    }

    void heardByOpenEar(StreamTime to) {
        heardByOpenEar.set(to);
    }

    /** The open ear has finished. */
    void openEarEnds() {
        openEarListens.set(false);
    }

    /** Whether the open ear has not yet processed the audio at {@code time}. */
    boolean openEarIsBehind(StreamTime time) {
        return openEarListens.get() && heardByOpenEar.get().isBefore(time);
    }

    /** The recording is complete. */
    void tapeEnds() {
        taped.set(true);
    }

    boolean tapeEnded() {
        return taped.get();
    }

    /** Asks the open ear to skip the rest. */
    public void hurry() {
        hurried.set(true);
    }

    boolean hurried() {
        return hurried.get();
    }
}
