package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Outcome;
import org.bookholder.testing.Histories;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.Pickups;

final class SessionProperties {
    private static SessionState begin() {
        return Session.begin(Histories.SCRIPT, FatigueLimits.defaults());
    }

    @Property(tries = 300)
    void theSameEventsGiveTheSameState(@ForAll @Size(max = 60) List<@IntRange(min = 0, max = 5000) Integer> numbers) {
        assertThat(Session.apply(begin(), Histories.of(numbers)))
                .isEqualTo(Session.apply(begin(), Histories.of(numbers)));
    }

    @Property(tries = 300)
    void settlingATakeTwiceChangesNothing(
            @ForAll @Size(max = 60) List<@IntRange(min = 0, max = 5000) Integer> numbers,
            @ForAll @IntRange(min = 0, max = 5000) int n) {
        SessionState before = Session.apply(begin(), Histories.of(numbers));
        SessionState once = Session.apply(before, Histories.take(1, n, 2000));
        SessionState twice = Session.apply(once, Histories.take(1, n, 2000));
        assertThat(twice.lines().all()).isEqualTo(once.lines().all());
        assertThat(twice.lines().asides()).isEqualTo(once.lines().asides());
        assertThat(twice.measures().pace()).isEqualTo(once.measures().pace());
        assertThat(twice.measures().fatigue()).isEqualTo(once.measures().fatigue());
    }

    @Property(tries = 300)
    void eachLinesNotesAreConsistent(@ForAll @Size(max = 80) List<@IntRange(min = 0, max = 5000) Integer> numbers) {
        SessionState state = Session.apply(begin(), Histories.of(numbers));
        for (LineNotes line : state.lines().all()) {
            assertThat(line.best()
                            .map(Attempt::outcome)
                            .orElse(line.attempts().isEmpty() ? Outcome.SKIPPED : Outcome.INCOMPLETE))
                    .isEqualTo(line.outcome());
            assertThat(line.attempts()).allSatisfy(a -> assertThat(a.line()).isEqualTo(line.line()));
            assertThat(line.reached() || line.attempts().isEmpty()).isTrue();
            assertThat(line.attempts().stream().map(a -> a.take() + "/" + a.ordinal()))
                    .doesNotHaveDuplicates();
        }
        assertThat(state.measures().pace().live() < 0 || state.measures().pace().lesson() < 0)
                .isFalse();
        assertThat(Pickups.of(state)).hasSameSizeAs(state.lines().pickups());
    }

    /** Whatever was learnt of a presenter: it takes back swapped words only. */
    @Property(tries = 300)
    void whatIsLearntMakesNoSkippedOrUnfinishedLineClean(
            @ForAll @Size(min = 1, max = 60) List<@IntRange(min = 0, max = 5000) Integer> numbers) {
        List<SessionEvent> events = Histories.of(numbers);
        SessionState without = Session.apply(begin(), events);
        List<AcceptedReading> all = without.lines().all().stream()
                .flatMap(line -> line.attempts().stream())
                .flatMap(attempt -> attempt.deviations().stream())
                .map(call -> AcceptedReading.heardAs(call.written(), call.said()))
                .toList();
        SessionState with = Session.apply(
                Session.apply(begin(), new SessionEvent.Remarked(StreamTime.ZERO, new Remark.Carried(all))), events);
        for (LineNotes line : without.lines().all()) {
            LineNotes learnt = with.lines().notes(line.line());
            assertThat(learnt.attempts().stream().map(Attempt::complete).toList())
                    .isEqualTo(line.attempts().stream().map(Attempt::complete).toList());
            assertThat(others(learnt)).isEqualTo(others(line));
            if (line.outcome() == Outcome.SKIPPED || line.outcome() == Outcome.INCOMPLETE) {
                assertThat(learnt.outcome()).isEqualTo(line.outcome());
            }
        }
    }

    /** The words that were dropped or added. */
    private static List<Deviation> others(LineNotes line) {
        return line.attempts().stream()
                .flatMap(attempt -> attempt.deviations().stream())
                .filter(call -> call.kind() != Deviation.Kind.SWAPPED)
                .toList();
    }
}
