package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;
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
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.Aside;
import org.bookholder.follow.Attempt;
import org.bookholder.follow.FollowState;
import org.bookholder.follow.Outcome;
import org.bookholder.script.Script;
import org.bookholder.session.SessionEvent.FollowChanged;
import org.bookholder.session.SessionEvent.Held;
import org.bookholder.session.SessionEvent.PickupMarked;
import org.bookholder.session.SessionEvent.Resumed;
import org.bookholder.session.SessionEvent.TakeSettled;
import org.bookholder.testing.Scripts;

final class SessionProperties {
    private static final Script SCRIPT = Scripts.sized(100, 12, 5);

    private static SessionState begin() {
        return Session.begin(SCRIPT, FatigueLimits.defaults());
    }

    /** Each number is an event: its kind, and what it is about. */
    private static List<SessionEvent> events(List<Integer> numbers) {
        List<SessionEvent> events = new ArrayList<>(List.of(rolled(1, 0)));
        int take = 1;
        double at = 0;
        for (int n : numbers) {
            at += n % 17 * 0.3;
            int line = n / 16 % 12 + 1;
            switch (n % 10) {
                case 0 -> events.add(moved(at, line, 1, 0));
                case 1, 2, 3 -> events.add(moved(at, line, n % 5 + 1, n % 4));
                case 4 -> events.add(settled(attempt(take, n % 7 + 1, line, n, at)));
                case 5 ->
                    events.add(new FollowChanged(
                            s(at), List.of(FollowState.values()).get(n % 3)));
                case 6 -> events.add(n % 3 == 0 ? new Held(s(at)) : new Resumed(s(at)));
                case 7 -> events.add(new PickupMarked(s(at), line, "again"));
                case 8 -> events.add(take(take, n, at));
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

    private static TakeSettled take(int take, int n, double at) {
        return new TakeSettled(
                s(at),
                take,
                List.of(attempt(take, 1, n % 12 + 1, n, 1), attempt(take, 2, n % 11 + 1, n + 1, 4)),
                List.of(new Aside(take, s(2), s(3), "well", 1)));
    }

    @Property(tries = 300)
    void theSameEventsGiveTheSameState(@ForAll @Size(max = 60) List<@IntRange(min = 0, max = 5000) Integer> numbers) {
        assertThat(Session.apply(begin(), events(numbers))).isEqualTo(Session.apply(begin(), events(numbers)));
    }

    @Property(tries = 300)
    void settlingATakeTwiceIsSettlingItOnce(
            @ForAll @Size(max = 60) List<@IntRange(min = 0, max = 5000) Integer> numbers,
            @ForAll @IntRange(min = 0, max = 5000) int n) {
        SessionState before = Session.apply(begin(), events(numbers));
        SessionState once = Session.apply(before, take(1, n, 2000));
        SessionState twice = Session.apply(once, take(1, n, 2000));
        assertThat(twice.lines()).isEqualTo(once.lines());
        assertThat(twice.asides()).isEqualTo(once.asides());
        assertThat(twice.pace()).isEqualTo(once.pace());
        assertThat(twice.fatigue()).isEqualTo(once.fatigue());
    }

    @Property(tries = 300)
    void eachLinesNotesHoldTogether(@ForAll @Size(max = 80) List<@IntRange(min = 0, max = 5000) Integer> numbers) {
        SessionState state = Session.apply(begin(), events(numbers));
        for (LineNotes line : state.lines()) {
            assertThat(line.best()
                            .map(Attempt::outcome)
                            .orElse(line.attempts().isEmpty() ? Outcome.SKIPPED : Outcome.INCOMPLETE))
                    .isEqualTo(line.outcome());
            assertThat(line.attempts()).allSatisfy(a -> assertThat(a.line()).isEqualTo(line.line()));
            assertThat(line.reached() || line.attempts().isEmpty()).isTrue();
            assertThat(line.attempts().stream().map(a -> a.take() + "/" + a.ordinal()))
                    .doesNotHaveDuplicates();
        }
        assertThat(state.pace().live() < 0 || state.pace().lesson() < 0).isFalse();
        assertThat(Pickups.of(state)).hasSameSizeAs(state.pickups());
    }
}
