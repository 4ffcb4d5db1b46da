package org.bookholder.view.cue;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.session.Sound;
import org.bookholder.sound.SpeechPeaks;
import org.bookholder.timing.StreamTime;
import org.bookholder.view.cue.SoundCue.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Verdicts on the sound, in virtual time. */
final class SoundCueTest {
    private final SoundCue cue = new SoundCue();

    @Test
    void speechOfUsualLevelIsGood() {
        speak(-12, 3);
        assertThat(cue.verdict()).isEqualTo(Verdict.GOOD);
    }

    /** The rule of the sound check, in the window's words. */
    @ParameterizedTest
    @CsvSource({"-27, LOW", "-18, LOWISH", "-9, GOOD", "-3, LOUDISH", "-0.5, LOUD"})
    void theWindowSaysWhatTheSoundCheckSays(double peak, Verdict verdict) {
        speak(peak, 3);
        assertThat(cue.verdict()).isEqualTo(verdict);
    }

    @Test
    void nothingIsSaidBeforeSomebodySpeaks() {
        silent(-60, 20);
        assertThat(cue.verdict()).isEqualTo(Verdict.UNKNOWN);
    }

    @Test
    void weakSpeechIsTooLowButAPauseIsNot() {
        speak(-12, 3);
        silent(-60, 30);
        assertThat(cue.verdict()).isEqualTo(Verdict.GOOD);
        speak(-40, 40);
        assertThat(cue.verdict()).isEqualTo(Verdict.LOW);
        speak(-12, 3);
        assertThat(cue.verdict()).isEqualTo(Verdict.GOOD);
    }

    @Test
    void clippingIsTooLoudAtOnceAndForAWhile() {
        speak(-12, 3);
        cue.advance(new Sound(-10, 0, 5, StreamTime.ZERO), true, 0.1);
        assertThat(cue.verdict()).isEqualTo(Verdict.LOUD);
        cue.advance(new Sound(-20, -10, 5, StreamTime.ZERO), true, 0.1);
        assertThat(cue.verdict()).isEqualTo(Verdict.LOUD);
        for (int i = 0; i < 10 * (SpeechPeaks.SECONDS + 3); i++) {
            cue.advance(new Sound(-20, -10, 5, StreamTime.ZERO), true, 0.1);
        }
        assertThat(cue.verdict()).isEqualTo(Verdict.GOOD);
    }

    @Test
    void digitalSilenceIsNoSoundOnceItHasLasted() {
        speak(-12, 3);
        silent(-120, 2);
        assertThat(cue.verdict()).isEqualTo(Verdict.GOOD);
        silent(-120, 1);
        assertThat(cue.verdict()).isEqualTo(Verdict.GONE);
    }

    private void speak(double peak, double seconds) {
        pass(peak, true, seconds);
    }

    private void silent(double peak, double seconds) {
        pass(peak, false, seconds);
    }

    private void pass(double peak, boolean spoken, double seconds) {
        for (double t = 0; t < seconds; t += 0.1) {
            cue.advance(new Sound(peak - 15, peak, 0, StreamTime.ZERO), spoken, 0.1);
        }
    }
}
