package org.bookholder.runtime.take;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.bookholder.follow.Follower;
import org.bookholder.session.Renumbering;
import org.bookholder.session.TakeEnd;
import org.bookholder.speech.EarKind;
import org.bookholder.timing.StreamTime;

/** A take from its start until it is settled, as held by the session's owner. Confined to one thread. */
public final class RunningTake {
    private final TakeChannels run;
    private final Follower follower;
    private final EvidenceOrder order;
    private final Instant when;
    private final Set<EarKind> listening;
    private final SpoiledLines spoiled = new SpoiledLines();
    private final List<Renumbering> changes = new ArrayList<>();
    private StreamTime heardByOpenEar;
    private StreamTime end;
    private TakeEnd reason = TakeEnd.OTHER;
    private boolean captured;

    RunningTake(TakeChannels run, Follower follower, EvidenceOrder order, Instant when, Set<EarKind> listening) {
        this.run = run;
        this.follower = follower;
        this.order = order;
        this.when = when;
        this.listening = EnumSet.copyOf(listening);
        this.heardByOpenEar = run.start();
        this.end = run.start();
    }

    public TakeChannels run() {
        return run;
    }

    public Follower follower() {
        return follower;
    }

    /** The spoiled parts of its sound. */
    public SpoiledLines spoiled() {
        return spoiled;
    }

    /** Puts the reports of the ears in order for the follower. */
    public EvidenceOrder order() {
        return order;
    }

    /**
     * Call when the script changes after the take; the take itself keeps the line numbers of the text that was read.
     */
    public void textChanged(Renumbering lines) {
        changes.add(lines);
    }

    /** The changes of line numbers since the take. */
    public List<Renumbering> changes() {
        return changes;
    }

    /** Time of day of the first sample. */
    Instant when() {
        return when;
    }

    /** Where the take's audio ends, once it has. */
    public StreamTime end() {
        return end;
    }

    /** Why it ended. */
    public TakeEnd reason() {
        return reason;
    }

    public void captureEnded(StreamTime at, TakeEnd why) {
        captured = true;
        end = at;
        reason = why;
    }

    public void heardByOpenEar(StreamTime to) {
        heardByOpenEar = to;
    }

    public void earDone(EarKind ear) {
        listening.remove(ear);
    }

    /** Whether the capture has ended and the script ear has heard everything. */
    public boolean over() {
        return captured && !listening.contains(EarKind.SCRIPT);
    }

    /** Whether both ears have finished with it. */
    public boolean settled() {
        return captured && listening.isEmpty();
    }

    /** How much audio the open ear still has to process. */
    public StreamTime behind() {
        return listening.contains(EarKind.OPEN) ? run.captured().since(heardByOpenEar) : StreamTime.ZERO;
    }
}
