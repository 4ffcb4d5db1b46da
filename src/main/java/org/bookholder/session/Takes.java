package org.bookholder.session;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.bookholder.pace.TakeTime.Span;
import org.bookholder.timing.StreamTime;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/**
 * The takes of a session, and the condition of the last one. Immutable; a changed copy shares its unchanged parts.
 *
 * @param all the takes so far, the last one possibly running
 * @param rolling whether a take is running
 * @param begun whether reading has begun in the last take
 * @param heldSince when the current hold began; empty if the take is not held
 * @param countIn the count-in that the hold is for; empty if it is for none
 * @param holds the finished holds, in order
 * @param restingSince time of day at which the last take was cut or the last break ended, also in an earlier session of
 *     the day; empty before the first cut
 */
public record Takes(
        PVector<Take> all,
        boolean rolling,
        boolean begun,
        Optional<StreamTime> heldSince,
        Optional<CountIn> countIn,
        PVector<Span> holds,
        Optional<Instant> restingSince) {
    static final Takes NONE = new Takes(
            TreePVector.empty(),
            false,
            false,
            Optional.empty(),
            Optional.empty(),
            TreePVector.empty(),
            Optional.empty());

    /** Takes made by hand, for display. */
    public static Takes of(List<Take> all, boolean rolling, Optional<StreamTime> heldSince) {
        return new Takes(
                TreePVector.from(all),
                rolling,
                rolling,
                heldSince,
                Optional.empty(),
                TreePVector.empty(),
                Optional.empty());
    }

    /** Whether the take is held. */
    public boolean held() {
        return heldSince.isPresent();
    }

    /** Number of takes. */
    public int count() {
        return all.size();
    }

    /** The last take; there must be one. */
    public Take last() {
        return all.get(all.size() - 1);
    }

    /** The take with this number; empty if there is none. */
    public Optional<Take> number(int number) {
        return all.stream().filter(take -> take.number() == number).findFirst();
    }

    /** Whether a finished hold overlaps the time between {@code from} and {@code to}. */
    public boolean heldWithin(StreamTime from, StreamTime to) {
        return holds.stream().anyMatch(hold -> hold.start().isBefore(to) && from.isBefore(hold.end()));
    }

    Takes rolled(Take take) {
        return new Takes(all.plus(take), true, false, heldSince, Optional.empty(), holds, restingSince);
    }

    /** The same with reading begun in the running take. */
    Takes begin() {
        return begun ? this : new Takes(all, rolling, true, heldSince, countIn, holds, restingSince);
    }

    /** The same with the running take's audio extended to {@code at}. */
    Takes reached(StreamTime at) {
        return new Takes(
                all.with(all.size() - 1, last().endingAt(at)), rolling, begun, heldSince, countIn, holds, restingSince);
    }

    /** The same with the running take cut, and its hold ended, at {@code at}. */
    Takes cut(StreamTime at, Instant when) {
        Takes resumed = resumed(at);
        return new Takes(all, false, begun, Optional.empty(), Optional.empty(), resumed.holds, Optional.of(when));
    }

    Takes held(StreamTime at) {
        return !rolling || held()
                ? this
                : new Takes(all, true, begun, Optional.of(at), Optional.empty(), holds, restingSince);
    }

    /** The same with a count-in; unchanged if the take is not held. */
    Takes countedIn(CountIn count) {
        return held() ? new Takes(all, rolling, begun, heldSince, Optional.of(count), holds, restingSince) : this;
    }

    Takes resumed(StreamTime at) {
        return heldSince
                .map(since -> new Takes(
                        all,
                        rolling,
                        begun,
                        Optional.empty(),
                        Optional.empty(),
                        holds.plus(new Span(since, at)),
                        restingSince))
                .orElse(this);
    }

    /** The same with a rest that began, or was counted up to, this time of day. */
    Takes resting(Instant since) {
        return new Takes(all, rolling, begun, heldSince, countIn, holds, Optional.of(since));
    }

    /** The same with a current rest counted up to this time of day. */
    Takes restedTo(Instant when) {
        return new Takes(all, rolling, begun, heldSince, countIn, holds, restingSince.map(before -> when));
    }
}
