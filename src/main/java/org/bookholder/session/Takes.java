package org.bookholder.session;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.bookholder.pace.TakeTime.Span;
import org.bookholder.timing.StreamTime;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/**
 * The takes of a session, and what is going on in the last one. Immutable; shares its unchanged parts with the value
 * before.
 *
 * @param all the takes so far, the last one possibly running
 * @param rolling whether a take is running
 * @param begun whether reading has begun in the last take
 * @param heldSince when the hold that is going on began; empty if the take is not held
 * @param holds the holds that are over, in order
 * @param restingSince time of day at which the last take was cut or the last break ended; empty before the first cut
 */
public record Takes(
        PVector<Take> all,
        boolean rolling,
        boolean begun,
        Optional<StreamTime> heldSince,
        PVector<Span> holds,
        Optional<Instant> restingSince) {
    static final Takes NONE =
            new Takes(TreePVector.empty(), false, false, Optional.empty(), TreePVector.empty(), Optional.empty());

    /** Takes made by hand, to show. */
    public static Takes of(List<Take> all, boolean rolling, Optional<StreamTime> heldSince) {
        return new Takes(TreePVector.from(all), rolling, rolling, heldSince, TreePVector.empty(), Optional.empty());
    }

    /** Whether the take is held. */
    public boolean held() {
        return heldSince.isPresent();
    }

    /** How many takes there are. */
    public int count() {
        return all.size();
    }

    /** The last take; there must be one. */
    public Take last() {
        return all.get(all.size() - 1);
    }

    /** The take of that number; empty if there is none. */
    public Optional<Take> number(int number) {
        return all.stream().filter(take -> take.number() == number).findFirst();
    }

    /** Whether the take was held, in a hold that is over, at some moment between two times. */
    public boolean heldWithin(StreamTime from, StreamTime to) {
        return holds.stream().anyMatch(hold -> hold.start().isBefore(to) && from.isBefore(hold.end()));
    }

    Takes rolled(Take take) {
        return new Takes(all.plus(take), true, false, heldSince, holds, restingSince);
    }

    /** With reading having begun in the take that is running. */
    Takes begin() {
        return begun ? this : new Takes(all, rolling, true, heldSince, holds, restingSince);
    }

    /** With the audio of the take that is running having come to {@code at}. */
    Takes reached(StreamTime at) {
        return new Takes(all.with(all.size() - 1, last().endingAt(at)), rolling, begun, heldSince, holds, restingSince);
    }

    /** With the running take cut, and its hold over at {@code at}. */
    Takes cut(StreamTime at, Instant when) {
        Takes resumed = resumed(at);
        return new Takes(all, false, begun, Optional.empty(), resumed.holds, Optional.of(when));
    }

    Takes held(StreamTime at) {
        return !rolling || held() ? this : new Takes(all, true, begun, Optional.of(at), holds, restingSince);
    }

    Takes resumed(StreamTime at) {
        return heldSince
                .map(since ->
                        new Takes(all, rolling, begun, Optional.empty(), holds.plus(new Span(since, at)), restingSince))
                .orElse(this);
    }

    /** With a rest reckoned up to a time of day, if one was going on. */
    Takes restedTo(Instant when) {
        return new Takes(all, rolling, begun, heldSince, holds, restingSince.map(before -> when));
    }
}
