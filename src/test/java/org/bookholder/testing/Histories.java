package org.bookholder.testing;

import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.broken;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.moved;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.settled;
import static org.bookholder.testing.Readings.swapped;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowState;
import org.bookholder.script.model.Script;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionEvent.FollowChanged;
import org.bookholder.session.SessionEvent.Held;
import org.bookholder.session.SessionEvent.Opened;
import org.bookholder.session.SessionEvent.PickupMarked;
import org.bookholder.session.SessionEvent.RecordingFailed;
import org.bookholder.session.SessionEvent.Resumed;
import org.bookholder.session.SessionEvent.SamplesLost;
import org.bookholder.session.SessionEvent.SoundMeasured;
import org.bookholder.session.SessionEvent.SourceFound;
import org.bookholder.session.SessionEvent.SourceLost;
import org.bookholder.session.SessionEvent.TakeSettled;

/** Histories of one script's session for properties, every kind of event in an order that can be. */
public final class Histories {
    public static final Script SCRIPT = Scripts.sized(100, 12, 5);

    private Histories() {}

    /** Each number is an event: its kind, and what it is about. */
    public static List<SessionEvent> of(List<Integer> numbers) {
        List<SessionEvent> events = new ArrayList<>(List.of(rolled(1, 0)));
        int take = 1;
        double at = 0;
        for (int n : numbers) {
            at += n % 17 * 0.3;
            int line = n / 16 % 12 + 1;
            switch (n % 13) {
                case 0 -> events.add(moved(at, line, 1, 0));
                case 1, 2, 3 -> events.add(moved(at, line, n % 5 + 1, n % 4));
                case 4 -> events.add(settled(attempt(take, n % 7 + 1, line, n, at)));
                case 5 ->
                    events.add(new FollowChanged(
                            s(at), List.of(FollowState.values()).get(n % 3)));
                case 6 -> events.add(n % 3 == 0 ? new Held(s(at)) : new Resumed(s(at)));
                case 7 -> events.add(new PickupMarked(s(at), line, "again"));
                case 8 -> events.add(take(take, n, at));
                case 9 -> events.add(new SoundMeasured(s(at), -n % 60, -n % 50 * 0.5, n % 3));
                case 10 -> events.add(trouble(n, at));
                case 11 -> {
                    // The program was ended in mid-take and begins anew.
                    events.add(new Opened(s(at), MORNING.plusSeconds(n), SCRIPT.title(), SCRIPT.source(), "text"));
                    events.add(rolled(++take, at));
                }
                default -> {
                    events.add(cut(take, at));
                    events.add(rolled(++take, at + n % 5));
                    at += n % 5;
                }
            }
        }
        return events;
    }

    private static Attempt attempt(int take, int ordinal, int line, int n, double at) {
        return switch (n % 3) {
            case 0 -> broken(take, ordinal, line, 2, at, at + 1);
            case 1 -> complete(take, ordinal, line, 5, at, at + 2, swapped(2, "a", "b"));
            default -> complete(take, ordinal, line, 5, at, at + 2);
        };
    }

    public static TakeSettled take(int take, int n, double at) {
        return new TakeSettled(
                s(at),
                take,
                List.of(attempt(take, 1, n % 12 + 1, n, 1), attempt(take, 2, n % 11 + 1, n + 1, 4)),
                List.of(new Aside(take, s(2), s(3), "well", 1)));
    }

    private static SessionEvent trouble(int n, double at) {
        return switch (n % 4) {
            case 0 -> new SourceLost(s(at), "unplugged");
            case 1 -> new SourceFound(s(at), "another microphone");
            case 2 -> new SamplesLost(s(at), s(n % 5 * 0.25));
            default -> new RecordingFailed(s(at), "the disk is full");
        };
    }
}
