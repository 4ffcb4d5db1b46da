package org.bookholder.follow.judge;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

final class CertaintyTest {
    @Test
    void certaintyGrowsWithTheDifferenceInSound() {
        assertThat(Certainty.of(1, false, 0.2)).isGreaterThan(Certainty.of(0.5, false, 0.2));
    }

    @Test
    void certaintyIsLowerForAReaderWhomTheRecogniserOftenMishears() {
        assertThat(Certainty.of(1, false, 0.1)).isGreaterThan(Certainty.of(1, false, 0.8));
    }

    @Test
    void certaintyIsLowerForSeveralReportsInOneReading() {
        assertThat(certainty("turn the wheel slowly and watch the window beside the brake"))
                .isGreaterThan(certainty("turn the window slowly and watch the window beside the brake"));
    }

    private static double certainty(String said) {
        return ReadAloud.of(Scripts.of("Turn the wheel slowly and watch the gap beside the brake"))
                .say(said)
                .cut()
                .attempts()
                .get(0)
                .deviations()
                .get(0)
                .certainty();
    }
}
