package org.bookholder.handoff;

import java.time.Instant;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.model.WordTime;
import org.bookholder.script.model.Script;
import org.bookholder.session.Mover;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeEnd;
import org.bookholder.session.UnsavedStretch;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;

/** A session in which everything happens that an exporter has to write. */
public final class ExampleSession {
    private static final Instant NINE = Instant.parse("2026-03-02T09:00:00Z");
    private static final Script SCRIPT = Scripts.of(
            "Every wheel begins with its hub.",
            "Count the spokes \"twice\", and write down what you find before you go on.",
            "Then lace the first side.",
            "Turn it over; lace the other.",
            "Rest your hands.",
            "That is all.");

    private ExampleSession() {}

    public static SessionState state() {
        return of(events());
    }

    /** The session's state after these events, which may be more than its own. */
    public static SessionState of(List<SessionEvent> events) {
        return Session.apply(Session.begin(SCRIPT, FatigueLimits.defaults()), events);
    }

    public static List<SessionEvent> events() {
        List<Attempt> attempts = List.of(
                attempt(1, 1, 1, 3, true, List.of()),
                attempt(
                        2,
                        2,
                        4,
                        7.5,
                        true,
                        List.of(
                                new Deviation(3, "spokes", "folks", Deviation.Kind.SWAPPED, 0.9),
                                new Deviation(7, "down", "", Deviation.Kind.DROPPED, 0.8),
                                new Deviation(9, "", "really", Deviation.Kind.ADDED, 0.7))),
                attempt(3, 4, 12, 13, false, List.of()),
                attempt(4, 5, 14, 16, true, List.of()));
        return List.of(
                new SessionEvent.Opened(at(0), NINE, SCRIPT.title(), SCRIPT.source(), "text"),
                new SessionEvent.TakeStarted(at(0), 1, NINE, "desk microphone", ReadingPosition.START),
                new SessionEvent.PositionMoved(at(0), ReadingPosition.START, Mover.VOICE, 0),
                new SessionEvent.SoundMeasured(at(1), -24.5, -6.25, 0),
                new SessionEvent.PositionMoved(at(3.1), new ReadingPosition(2, 1), Mover.VOICE, 6),
                new SessionEvent.PositionMoved(at(7.6), new ReadingPosition(3, 1), Mover.VOICE, 14),
                new SessionEvent.FollowChanged(at(9), FollowState.ASIDE),
                new SessionEvent.FollowChanged(at(11), FollowState.FOLLOWING),
                new SessionEvent.PositionMoved(at(12), new ReadingPosition(4, 1), Mover.HAND, 0),
                new SessionEvent.PositionMoved(at(16.1), new ReadingPosition(6, 1), Mover.VOICE, 3),
                new SessionEvent.PickupMarked(at(16.5), 5, "a door slammed"),
                new SessionEvent.SamplesLost(at(17), at(0.25)),
                new SessionEvent.SoundNotSaved(at(17), new UnsavedStretch(1, at(16), at(16.5))),
                new SessionEvent.TakeEnded(at(18), 1, NINE.plusSeconds(18), TakeEnd.CUT),
                new SessionEvent.TakeSettled(
                        at(18), 1, attempts, List.of(new Aside(1, at(8.5), at(10.5), "was that the post", 2))));
    }

    private static Attempt attempt(
            int ordinal, int line, double start, double end, boolean complete, List<Deviation> deviations) {
        return new Attempt(
                1,
                ordinal,
                line,
                at(start),
                at(end),
                complete,
                List.of(new WordTime(1, at(start), at(start + 0.3))),
                deviations);
    }

    private static StreamTime at(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }
}
