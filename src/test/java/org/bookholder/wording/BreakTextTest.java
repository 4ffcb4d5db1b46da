package org.bookholder.wording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.bookholder.fatigue.AdviceFigures;
import org.bookholder.fatigue.BreakAdvice;
import org.bookholder.fatigue.BreakAdvice.Reason;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.fatigue.FatigueLimits.Limit;
import org.bookholder.fatigue.LimitsForm;
import org.junit.jupiter.api.Test;

final class BreakTextTest {
    private static final Limit LIMIT = Limit.ofMinutes(30, 35, 40);

    private static String clock(Reason reason, long minutes, Limit limit, boolean rested) {
        Duration elapsed = Duration.ofMinutes(minutes);
        return BreakText.of(new BreakAdvice(
                reason,
                limit.urgency(elapsed),
                limit.due().minus(elapsed),
                new AdviceFigures.Clock(elapsed, limit, rested)));
    }

    private static String stumbling(Urgency urgency, AdviceFigures figures) {
        return BreakText.of(new BreakAdvice(Reason.STUMBLING, urgency, Duration.ZERO, figures));
    }

    @Test
    void saysHowLongSomeoneHasReadAndWhenToRest() {
        assertThat(clock(Reason.VOICE, 34, LIMIT, true))
                .isEqualTo("Reading for 34 min since the last break; voice rest is advised at 35 min.");
        assertThat(clock(Reason.VOICE, 35, LIMIT, false))
                .isEqualTo("Reading for 35 min without a break; voice rest is advised at 35 min.");
        assertThat(clock(Reason.VOICE, 36, LIMIT, false))
                .isEqualTo("Reading for 36 min without a break; voice rest was advised at 35 min.");
        assertThat(clock(Reason.SCREEN, 20, LIMIT, false))
                .isEqualTo("At the screen for 20 min without a break; 5 to 10 min away from it is advised at 35 min.");
    }

    @Test
    void saysAfterHowManyHoursReadingAndTheCameraTire() {
        assertThat(clock(Reason.READING, 110, Limit.ofMinutes(100, 120, 180), true))
                .isEqualTo("1 h 50 min of reading today; reading from a script tires after 2 h to 3 h.");
        assertThat(clock(Reason.ON_CAMERA, 60, Limit.ofMinutes(100, 120, 120), true))
                .isEqualTo("1 h on camera today; being on camera tires after 2 h.");
    }

    @Test
    void saysHowMuchMoreSomeoneStumbles() {
        AdviceFigures fluffs = new AdviceFigures.Fluffs(1.26, 0.24);
        assertThat(stumbling(Urgency.DUE, fluffs))
                .isEqualTo("Stumbling more: 1.3 fluffs in 100 words over the last ten minutes, 0.2 in the first "
                        + "twenty; a break may help.");
        assertThat(stumbling(Urgency.NONE, fluffs))
                .isEqualTo("1.3 fluffs in 100 words over the last ten minutes, 0.2 in the first twenty.");
        assertThat(stumbling(Urgency.NONE, new AdviceFigures.TooLittle()))
                .isEqualTo("Too little has been read to tell of stumbling.");
    }

    @Test
    void saysHowFarThePaceHasDrifted() {
        assertThat(stumbling(Urgency.COMING, new AdviceFigures.Pace(150.4, 119.6)))
                .isEqualTo("The pace has drifted from 120 words a minute in the first twenty minutes to 150 in the "
                        + "last ten; a break may help.");
    }

    @Test
    void refusesAClockForStumbling() {
        assertThatThrownBy(() -> clock(Reason.STUMBLING, 1, LIMIT, false))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("has no clock");
    }

    @Test
    void theCautionsSendPainToRestAndToAClinician() {
        assertThat(String.join(" ", Cautions.lines()))
                .contains("hurts", "hoarse", "clinician", "eyes", "water", "not medical advice", "Local work rules");
        assertThat(String.join(" ", Cautions.brief()))
                .contains("Voice and eyes", "hurts", "hoarse", "clinician if it lasts", "Local work rules", "licensed");
    }

    @Test
    void everyLimitNamesItsSource() {
        assertThat(Cautions.sources())
                .allSatisfy(line -> assertThat(line)
                        .containsAnyOf(
                                "(Titze, Svec and Popolo 2003",
                                "(Health and Safety Executive, UK",
                                "(common practice)"));
        assertThat(String.join("\n", Cautions.sources()))
                .contains(LimitsForm.values(FatigueLimits.defaults()).keySet());
    }
}
