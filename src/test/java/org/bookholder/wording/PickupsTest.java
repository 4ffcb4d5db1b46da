package org.bookholder.wording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.broken;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.dropped;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.settled;
import static org.bookholder.testing.Readings.swapped;

import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.Session;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.SessionDump;
import org.bookholder.wording.Pickup.Place;
import org.junit.jupiter.api.Test;

final class PickupsTest {
    private static SessionState reading() {
        return Session.apply(
                Session.begin(
                        Scripts.of(
                                "Spring is when a hive decides whether it will stay.",
                                "Buy a dozen frames.",
                                "Turn them to the sun.",
                                "Then wait for spring."),
                        FatigueLimits.defaults()),
                List.of(
                        rolled(1, 2),
                        settled(broken(1, 1, 1, 3, 3, 4)),
                        settled(complete(
                                1, 2, 1, 10, 5, 9, dropped(4, "a"), dropped(5, "hive"), swapped(10, "stay", "go"))),
                        settled(broken(1, 3, 3, 2, 12, 13)),
                        settled(complete(1, 4, 4, 4, 14, 16))));
    }

    @Test
    void tellsWhatWasSaidHowOftenItWasTriedAndWhen() {
        List<Pickup> list = Pickups.of(reading());
        assertThat(list).extracting(Pickup::line).containsExactly(1, 2, 3);
        assertThat(list)
                .extracting(Pickup::outcome)
                .containsExactly(Outcome.MISREAD, Outcome.SKIPPED, Outcome.INCOMPLETE);
        assertThat(list)
                .extracting(Pickup::said)
                .containsExactly("“a hive” left out; “go” for “stay”", "not read", "broken off after “them”");
        assertThat(list).extracting(Pickup::attempts).containsExactly(2, 0, 1);
        assertThat(list.get(0).firstWords()).isEqualTo("Spring is when a hive decides …");
        assertThat(list.get(0).where()).contains(new Place(1, s(3), MORNING.plusSeconds(5)));
    }

    @Test
    void aSkippedLinesPlaceIsTheEndOfTheReadingBeforeIt() {
        assertThat(Pickups.of(reading()).get(1).where()).contains(new Place(1, s(7), MORNING.plusSeconds(9)));
    }

    @Test
    void aStateIsDumpedAsTextThatCanBeCompared() {
        assertThat(SessionDump.of(reading()).lines())
                .contains(
                        "line 2 skipped PICKUP: Buy a dozen frames.",
                        "  attempt 1/4 14.00-16.00 clean best",
                        "take 1 2.00-16.00 2026-01-05T09:00:02Z 'a microphone'");
    }
}
