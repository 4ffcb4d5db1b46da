package org.bookholder.course.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** How much room there is until the launch; counted by hand in a calendar of 2027. */
final class LaunchRoomTest {
    /** A Monday. */
    private static final LocalDate TODAY = LocalDate.of(2027, 1, 4);

    private static final LocalDate READY = LocalDate.of(2027, 1, 7);

    private static LaunchRoom room(LocalDate hoped, Optional<LocalDate> ready, String unknown) {
        return new LaunchRoom(TODAY, Optional.of(hoped), false, false, ready, unknown, Optional.empty(), 0);
    }

    @Test
    void workingDaysBetweenTheForecastAndTheLaunchAreToSpare() {
        // Friday, Monday; not the weekend, nor the launch on Tuesday itself.
        LaunchRoom room = room(LocalDate.of(2027, 1, 12), Optional.of(READY), "");
        assertThat(room.spare()).isEqualTo(2);
        assertThat(room.sentences())
                .isEqualTo(
                        "Launch: on 2027-01-12. By the forecast the edit is done by 2027-01-07. 2 working days to spare."
                                + " What the checks find comes on top.");
        assertThat(room(READY.plusDays(1), Optional.of(READY), "").sentences())
                .contains("No working day is left to spare.");
    }

    @Test
    void whatIsTooLateSaysByHowMuchAndWhatHelps() {
        assertThat(room(LocalDate.of(2027, 1, 5), Optional.of(READY), "").sentences())
                .contains("2 days too late. More hours of editing a week");
        assertThat(room(READY, Optional.of(READY), "").sentences()).contains("That is the launch\u2019s own day.");
        assertThat(new LaunchRoom(
                                TODAY,
                                Optional.of(TODAY.plusDays(1)),
                                false,
                                false,
                                Optional.of(READY),
                                "",
                                Optional.of(TODAY.plusDays(2)),
                                2)
                        .sentences())
                .contains("Earlier recording days (the last is 2027-01-06)")
                .endsWith("2 lessons that can\u2019t be read yet are not counted.");
    }

    @Test
    void aDayThatIsOverOrAForecastThatIsNotKnownIsSaid() {
        assertThat(room(TODAY.minusDays(1), Optional.of(READY), "").sentences())
                .isEqualTo(
                        "Launch: 2027-01-03 is over. By the forecast the edit is done by 2027-01-07. Set a new day, or take it"
                                + " out.");
        assertThat(room(TODAY.plusDays(4), Optional.empty(), "3 lessons without a recording day")
                        .sentences())
                .isEqualTo(
                        "Launch: on 2027-01-08. Nobody knows yet when the edit will be done: 3 lessons without a recording"
                                + " day. 3 working days until then.");
    }

    @Test
    void aFinishedCourseCanGoOut() {
        LaunchRoom finished = new LaunchRoom(
                TODAY, Optional.of(TODAY.plusDays(1)), true, true, Optional.empty(), "", Optional.empty(), 0);
        assertThat(finished.sentences())
                .isEqualTo("Launch: on 2027-01-05. The course can go out now: 0 working days to spare.");
    }
}
