package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.moved;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.settled;

import java.time.Duration;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.script.model.Script;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

final class LongSessionTest {
    /** Three hours at 100 words a minute over and over a script of 2,000 words, without a break. */
    @Test
    void threeHoursKeepOnlyTheirAttempts() {
        Script script = Scripts.sized(100, 100, 20);
        SessionState state = Session.apply(Session.begin(script, FatigueLimits.defaults()), rolled(1, 0));
        double at = 1;
        for (int attempt = 1; attempt <= 900; attempt++) {
            int line = (attempt - 1) % 100 + 1;
            for (int word = 1; word <= 20; word++) {
                state = Session.apply(
                        state, word < 20 ? moved(at, line, word + 1, 1) : moved(at, line % 100 + 1, 1, 1));
                at += 0.6;
            }
            state = Session.apply(state, settled(complete(1, attempt, line, 20, at - 12, at)));
        }
        assertThat(state.lines().all()).allSatisfy(l -> assertThat(l.attempts()).hasSize(9));
        assertThat(state.sums().pace().marks()).hasSizeLessThan(60);
        assertThat(state.measures().pace().lesson()).isBetween(99.9, 100.1);
        assertThat(state.lines().pickups()).isEmpty();
        assertThat(state.measures().fatigue().reading()).isBetween(Duration.ofMinutes(179), Duration.ofMinutes(181));
        assertThat(state.measures().fatigue().advice().get(0).urgency()).isEqualTo(Urgency.OVERDUE);
    }

    /** What a move costs is what it changes: all else is shared with the state before, in a script of any length. */
    @Test
    void aMoveSharesTheLinesWithTheStateBefore() {
        Script script = Scripts.sized(100, 2500, 20);
        SessionState before = Session.apply(Session.begin(script, FatigueLimits.defaults()), rolled(1, 0));
        SessionState after = Session.apply(before, moved(2, 1, 3, 2));
        assertThat(after.lines().all()).isSameAs(before.lines().all());
        assertThat(after.lines().asides()).isSameAs(before.lines().asides());
        assertThat(after.sums().counts()).isSameAs(before.sums().counts());
    }
}
