package org.bookholder.runtime.take;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.Function;
import org.bookholder.follow.Follower;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.speech.EarKind;
import org.bookholder.timing.StreamTime;

/**
 * Sorts the reports of several ears on a file by audio time, so that following depends neither on the speed at which
 * the file is read nor on the speed of the ears. Live, evidence passes at once. Confined to one thread.
 */
public final class EvidenceOrder {
    private static final StreamTime END = new StreamTime(Long.MAX_VALUE);

    private final Map<EarKind, StreamTime> heardTo = new EnumMap<>(EarKind.class);
    private final PriorityQueue<Numbered> waiting = new PriorityQueue<>(
            Comparator.comparing((Numbered n) -> n.evidence().at())
                    .thenComparing(n -> n.evidence().kind())
                    .thenComparing(Numbered::number));
    private long count;

    /** Kinds of evidence; at the same time, earlier kinds come first. */
    public enum Kind {
        LEVELS,
        OPEN_EAR,
        SCRIPT_EAR,
        PERSON;

        public static Kind of(EarKind ear) {
            return ear == EarKind.SCRIPT ? SCRIPT_EAR : OPEN_EAR;
        }
    }

    /**
     * Evidence for a follower.
     *
     * @param at how much audio had been captured
     * @param tell passes it to the follower
     */
    public record Evidence(StreamTime at, Kind kind, Function<Follower, List<FollowEvent>> tell) {}

    private record Numbered(Evidence evidence, long number) {}

    /** Creates an order for evidence from {@code ears}; with no ears, evidence passes at once. */
    public EvidenceOrder(Set<EarKind> ears) {
        ears.forEach(ear -> heardTo.put(ear, StreamTime.ZERO));
    }

    /** Adds evidence; returns what can be passed on now, in order. */
    public List<Evidence> add(Evidence evidence) {
        waiting.add(new Numbered(evidence, count++));
        return ready();
    }

    /** Notes that an ear has reported everything up to {@code time}; returns what can be passed on now. */
    public List<Evidence> heardTo(EarKind ear, StreamTime time) {
        heardTo.computeIfPresent(ear, (e, before) -> StreamTime.max(before, time));
        return ready();
    }

    /** Notes that an ear will report nothing more; returns what can be passed on now. */
    public List<Evidence> done(EarKind ear) {
        return heardTo(ear, END);
    }

    private List<Evidence> ready() {
        StreamTime to = heardTo.values().stream().min(Comparator.naturalOrder()).orElse(END);
        List<Evidence> ready = new ArrayList<>();
        for (Numbered next = waiting.peek();
                next != null && !to.isBefore(next.evidence().at());
                next = waiting.peek()) {
            ready.add(next.evidence());
            waiting.remove();
        }
        return ready;
    }
}
