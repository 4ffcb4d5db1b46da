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

/** What the session's owner keeps of a take from its roll until it is settled. Confined to one thread. */
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

    /** Knows what is spoiled of its sound. */
    public SpoiledLines spoiled() {
        return spoiled;
    }

    /** Brings what the ears report to the follower in order. */
    public EvidenceOrder order() {
        return order;
    }

    /** The script was changed after the take, which goes on in terms of the text that was read. */
    public void textChanged(Renumbering lines) {
        changes.add(lines);
    }

    /** What became of the take's lines since. */
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

    /** Why it ended, for people. */
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

    /** Whether nothing more is to be heard. */
    public boolean settled() {
        return captured && listening.isEmpty();
    }

    /** How much the open ear still has to hear. */
    public StreamTime behind() {
        return listening.contains(EarKind.OPEN) ? run.captured().since(heardByOpenEar) : StreamTime.ZERO;
    }
}
