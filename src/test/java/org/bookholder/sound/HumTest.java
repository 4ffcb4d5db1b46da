package org.bookholder.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which steady tones are mains hum, and which are not. Each sound lasts two seconds, in a room of -90 dBFS. */
final class HumTest {
    private static final int RATE = 8_000;
    private static final double SECONDS = 2;

    @ParameterizedTest
    @CsvSource({"50, 50, 1", "100, 50, 2", "60, 60, 1", "120, 60, 2"})
    void theMainsFrequencyOrItsDoubleAloneIsHum(double hertz, int mains, int tone) {
        Hum hum = hum(tone(hertz, -50)).orElseThrow();
        assertThat(hum.hertz()).isEqualTo(mains);
        assertThat(hum.tones()).containsExactly(tone);
        assertThat(hum.level()).isCloseTo(-50, within(0.3));
    }

    @ParameterizedTest
    @CsvSource({"150", "180", "200", "440"})
    void aHigherMultipleAloneIsAnotherSound(double hertz) {
        assertThat(hum(tone(hertz, -50))).isEmpty();
    }

    @Test
    void upToTenMultiplesCount() {
        Hum hum = hum(tone(50, -50), tone(500, -50), tone(550, -50)).orElseThrow();
        assertThat(hum.tones()).containsExactly(1, 10);
        assertThat(hum.level()).isCloseTo(-50 + 10 * Math.log10(2), within(0.3));
    }

    @Test
    void theStrongerOfTwoHumsIsNamed() {
        assertThat(hum(tone(50, -50), tone(60, -45))).map(Hum::hertz).contains(60);
        assertThat(hum(tone(50, -45), tone(60, -50))).map(Hum::hertz).contains(50);
    }

    @Test
    void aToneMustStandOutFromWhatIsBesideIt() {
        assertThat(hum(tone(50, -50), Tones.noise(-20, RATE, SECONDS))).isEmpty();
        assertThat(hum(tone(50, -50), Tones.noise(-60, RATE, SECONDS))).isPresent();
    }

    /** -100 dBFS: what 16 bits can barely hold. */
    @Test
    void whatNobodyCanHearIsNone() {
        assertThat(Hum.of(tone(50, -103), RATE)).isEmpty();
        assertThat(Hum.of(tone(50, -95), RATE)).isPresent();
        assertThat(Hum.of(Tones.silence(RATE, SECONDS), RATE)).isEmpty();
    }

    @Test
    void lessThanASecondTellsNothing() {
        assertThat(Hum.of(Tones.sine(50, -40, RATE, 0.9), RATE)).isEmpty();
    }

    /** At 1,000 samples a second nothing above 490 Hz can be measured with what is beside it. */
    @Test
    void multiplesThatTheRateCannotHoldAreNotLookedFor() {
        float[] sound = Tones.mixed(
                Tones.sine(50, -47, 1_000, SECONDS),
                Tones.sine(450, -47, 1_000, SECONDS),
                Tones.noise(-90, 1_000, SECONDS));
        assertThat(Hum.of(sound, 1_000).orElseThrow().tones()).containsExactly(1, 9);
        float[] low = Tones.mixed(Tones.sine(50, -47, 220, SECONDS), Tones.noise(-90, 220, SECONDS));
        assertThat(Hum.of(low, 220).orElseThrow().tones()).containsExactly(1);
    }

    /** Half of the rate is a multiple of 50 Hz here: the fastest sound that the samples can hold. */
    @Test
    void theFastestSoundThatTheRateCanHoldIsNoTone() {
        float[] sound = Tones.mixed(Tones.sine(50, -47, 1_000, SECONDS), Tones.noise(-90, 1_000, SECONDS));
        for (int i = 0; i < sound.length; i++) {
            sound[i] += i % 2 == 0 ? 0.01f : -0.01f;
        }
        assertThat(Hum.of(sound, 1_000).orElseThrow().tones()).containsExactly(1);
    }

    @Test
    void aToneAmongOthersAsLoudDoesNotStandOut() {
        assertThat(hum(
                        tone(50, -50),
                        tone(42, -50),
                        tone(44, -50),
                        tone(46, -50),
                        tone(54, -50),
                        tone(56, -50),
                        tone(58, -50)))
                .isEmpty();
    }

    /** A sine of a root mean square level. */
    private static float[] tone(double hertz, double level) {
        return Tones.sine(hertz, level + 10 * Math.log10(2), RATE, SECONDS);
    }

    private static Optional<Hum> hum(float[]... sounds) {
        return Hum.of(Tones.mixed(Tones.mixed(sounds), Tones.noise(-90, RATE, SECONDS)), RATE);
    }
}
