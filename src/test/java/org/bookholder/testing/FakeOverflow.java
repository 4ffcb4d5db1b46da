package org.bookholder.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.Overflow;
import org.bookholder.runtime.record.Tape;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/** A second place in memory. */
public final class FakeOverflow implements Overflow {
    /** The stretches of sound, by their first samples. */
    public final Map<Long, FakeTape> stretches = new TreeMap<>();

    /** The events. */
    public final List<SessionEvent> events = new ArrayList<>();

    /** Whether it has room for events. */
    public boolean takesNotes = true;

    /** How many blocks each stretch has room for. */
    public int room = Integer.MAX_VALUE;

    /** The stretch that begins with this sample of its take; it has to be there. */
    public FakeTape stretch(long first) {
        return Objects.requireNonNull(stretches.get(first));
    }

    @Override
    public Tape begin(int take, int rate, StreamTime takeStart, long first) {
        FakeTape tape = new FakeTape();
        // One that is full stays full in another file as well.
        tape.room(stretches.isEmpty() ? room : room - Math.min(room, full()));
        stretches.put(first, tape);
        return tape;
    }

    private int full() {
        return stretches.values().stream()
                .mapToInt(tape -> tape.blocks().size())
                .sum();
    }

    @Override
    public int keep(List<SessionEvent> rest, Optional<SessionEvent> before) throws ProblemException {
        if (!takesNotes) {
            throw new ProblemException("the disk is full", "the second place", "make room");
        }
        events.clear();
        events.addAll(rest);
        return rest.size();
    }

    @Override
    public String place() {
        return stretches.isEmpty() && events.isEmpty() ? "" : "the second place";
    }
}
