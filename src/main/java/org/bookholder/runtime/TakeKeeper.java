package org.bookholder.runtime;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.bookholder.follow.Follower;
import org.bookholder.session.Renumbering;
import org.bookholder.speech.EarKind;
import org.bookholder.timing.StreamTime;

/** What the session's owner keeps of a take from its roll until it is settled. Confined to one thread. */
final class TakeKeeper {
    private final TakeRun run;
    private final Follower follower;
    private final EvidenceOrder order;
    private final Instant when;
    private final Set<EarKind> listening;
    private final SpoiledLines spoiled = new SpoiledLines();
    private final List<Renumbering> changes = new ArrayList<>();
    private StreamTime heardByOpenEar;
    private StreamTime end;
    private String reason = "";
    private boolean captured;

    TakeKeeper(TakeRun run, Follower follower, EvidenceOrder order, Instant when, Set<EarKind> listening) {
        this.run = run;
        this.follower = follower;
        this.order = order;
        this.when = when;
        this.listening = EnumSet.copyOf(listening);
        this.heardByOpenEar = run.start();
        this.end = run.start();
    }

    TakeRun run() {
        return run;
    }

    Follower follower() {
        return follower;
    }

    /** Knows what is spoiled of its sound. */
    SpoiledLines spoiled() {
        return spoiled;
    }

    /** Brings what the ears report to the follower in order. */
    EvidenceOrder order() {
        return order;
    }

    /** The script was changed after the take, which goes on in terms of the text that was read. */
    void textChanged(Renumbering lines) {
        changes.add(lines);
    }

    /** What became of the take's lines since. */
    List<Renumbering> changes() {
        return changes;
    }

    /** Time of day of the first sample. */
    Instant when() {
        return when;
    }

    /** Where the take's audio ends, once it has. */
    StreamTime end() {
        return end;
    }

    /** Why it ended, for people. */
    String reason() {
        return reason;
    }

    void captureEnded(StreamTime at, String why) {
        captured = true;
        end = at;
        reason = why;
    }

    void heardByOpenEar(StreamTime to) {
        heardByOpenEar = to;
    }

    void earDone(EarKind ear) {
        listening.remove(ear);
    }

    /** Whether the capture has ended and the script ear has heard everything. */
    boolean over() {
        return captured && !listening.contains(EarKind.SCRIPT);
    }

    /** Whether nothing more is to be heard. */
    boolean settled() {
        return captured && listening.isEmpty();
    }

    /** How much the open ear still has to hear. */
    StreamTime behind() {
        return listening.contains(EarKind.OPEN) ? run.captured().since(heardByOpenEar) : StreamTime.ZERO;
    }
}
