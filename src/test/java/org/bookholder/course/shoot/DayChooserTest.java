package org.bookholder.course.shoot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.course.shoot.DayChooser.Wanting;
import org.junit.jupiter.api.Test;

final class DayChooserTest {
    @Test
    void sessionsComeInTheOrderOfTheirLessonsOnTheEarliestDays() {
        assertThat(DayChooser.days(
                        List.of(120, 120, 120, 120),
                        List.of(new Wanting(100, 5), new Wanting(90, 1), new Wanting(110, 3))))
                .containsExactly(2, 0, 1);
    }

    @Test
    void aLongSessionWaitsForADayThatHoldsIt() {
        assertThat(DayChooser.days(List.of(60, 120, 60), List.of(new Wanting(100, 1), new Wanting(50, 2))))
                .containsExactly(1, 0);
    }

    /** On the first day there would be room for both of the short ones; the last needs the only long day. */
    @Test
    void noSessionTakesTheOnlyPossibleDayOfAnother() {
        assertThat(DayChooser.days(
                        List.of(120, 60, 60), List.of(new Wanting(50, 1), new Wanting(100, 3), new Wanting(40, 2))))
                .containsExactly(1, 0, 2);
    }

    @Test
    void aDayThatIsTooShortForEverySessionStaysFree() {
        assertThat(DayChooser.days(List.of(30, 60, 60), List.of(new Wanting(50, 1), new Wanting(60, 2))))
                .containsExactly(1, 2);
    }

    @Test
    void twoPartsThatWantTheSameHaveADayEach() {
        assertThat(DayChooser.days(
                        List.of(31, 30, 179, 179),
                        List.of(new Wanting(179, 3), new Wanting(22, 1), new Wanting(179, 3))))
                .containsExactly(2, 0, 3);
    }
}
