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
 * Puts what several ears report of a file in the order of its audio, so that what is followed depends neither on the
 * reading's speed nor on the ears'. Live, evidence passes at once. Confined to one thread.
 */
public final class EvidenceOrder {
    private static final StreamTime END = new StreamTime(Long.MAX_VALUE);

    private final Map<EarKind, StreamTime> heardTo = new EnumMap<>(EarKind.class);
    private final PriorityQueue<Numbered> waiting = new PriorityQueue<>(
            Comparator.comparing((Numbered n) -> n.evidence().at())
                    .thenComparing(n -> n.evidence().kind())
                    .thenComparing(Numbered::number));
    private long count;

    /** What evidence is of; of the same moment, earlier ones are told first. */
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
     * Something that a follower is told.
     *
     * @param at how much audio had been taken in
     * @param tell tells it
     */
    public record Evidence(StreamTime at, Kind kind, Function<Follower, List<FollowEvent>> tell) {}

    private record Numbered(Evidence evidence, long number) {}

    /** Creates the order of evidence from {@code ears}; of none, if it is to pass at once. */
    public EvidenceOrder(Set<EarKind> ears) {
        ears.forEach(ear -> heardTo.put(ear, StreamTime.ZERO));
    }

    /** Takes in evidence and returns what may be told now, in order. */
    public List<Evidence> add(Evidence evidence) {
        waiting.add(new Numbered(evidence, count++));
        return ready();
    }

    /** Takes in that an ear has reported everything to {@code time}, and returns what may be told now. */
    public List<Evidence> heardTo(EarKind ear, StreamTime time) {
        heardTo.computeIfPresent(ear, (e, before) -> StreamTime.max(before, time));
        return ready();
    }

    /** Takes in that an ear will report nothing more, and returns what may be told now. */
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
