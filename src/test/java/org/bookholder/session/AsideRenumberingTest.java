package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.follow.model.Aside;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** What becomes of asides when the script's text is changed. */
final class AsideRenumberingTest {
    private static final Renumbering CHANGE = Renumbering.between(
            Scripts.of("One wheel.", "Two hubs.", "Three spokes.", "Four rims."),
            Scripts.of("Before all.", "One wheel.", "Three spokes.", "And more.", "Four rims."));

    @Test
    void anAsideGoesWithTheLineThatItWasSaidAfter() {
        assertThat(now(1)).isEqualTo(2);
        assertThat(now(3)).isEqualTo(3);
        assertThat(now(4)).isEqualTo(5);
    }

    @Test
    void anAsideOfADeletedLineFollowsTheNearestLineBefore() {
        assertThat(now(2)).isEqualTo(2);
    }

    @Test
    void anAsideBeforeTheFirstLineStaysThere() {
        assertThat(now(0)).isZero();
        Renumbering firstGone = Renumbering.between(Scripts.of("One wheel.", "Two."), Scripts.of("Two."));
        assertThat(firstGone.asides(List.of(aside(1))).get(0).line()).isZero();
    }

    private static int now(int line) {
        return CHANGE.asides(List.of(aside(line))).get(0).line();
    }

    private static Aside aside(int line) {
        return new Aside(1, StreamTime.ZERO, StreamTime.ofSeconds(1), "hm", line);
    }
}
