package org.bookholder.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.s;

import java.util.List;
import java.util.Optional;
import org.bookholder.sound.SoundFinding.Grade;
import org.bookholder.sound.SoundFinding.Kind;
import org.bookholder.speech.AudioBlock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From which figures on the sound of a room and a voice is good, fair or poor, and what is measured for it. */
final class SoundLimitsTest {
    private static final int RATE = 1000;

    /** Peaks from -12 to -6 dBFS: what oral history archives advise (Boyd, Oral History Association). */
    @ParameterizedTest
    @CsvSource({
        "-0.9, POOR, LEVEL_TOO_HIGH",
        "-1, FAIR, LEVEL_TOO_HIGH",
        "-5.9, FAIR, LEVEL_TOO_HIGH",
        "-6, GOOD, LEVEL_RIGHT",
        "-12, GOOD, LEVEL_RIGHT",
        "-12.1, FAIR, LEVEL_TOO_LOW",
        "-24, FAIR, LEVEL_TOO_LOW",
        "-24.1, POOR, LEVEL_TOO_LOW"
    })
    void peaks(double peak, Grade grade, Kind kind) {
        SoundCheck check = new SoundCheck(room(-70, -68, 0, null), voice(-20, 0.8, peak, 0));
        assertThat(check.findings()).contains(new SoundFinding(grade, kind));
    }

    @ParameterizedTest
    @CsvSource({"-55, GOOD", "-54, FAIR", "-45, FAIR", "-44, POOR"})
    void voiceToRoom(double floor, Grade grade) {
        SoundCheck check = new SoundCheck(room(floor, floor, 0, null), voice(-20, 0.8, -9, 0));
        assertThat(check.findings()).contains(new SoundFinding(grade, Kind.VOICE_TO_ROOM));
    }

    @ParameterizedTest
    @CsvSource({
        "-60, -58, GOOD, ROOM_NOISE",
        "-59, -58, FAIR, ROOM_NOISE",
        "-50, -48, FAIR, ROOM_NOISE",
        "-49, -48, POOR, ROOM_NOISE",
        // with one noise in it
        "-70, -55, GOOD, ROOM_NOISE",
        "-70, -54, FAIR, ROOM_DISTURBED",
        "-60, -45, GOOD, ROOM_NOISE",
        "-60, -44, FAIR, ROOM_DISTURBED",
        "-45, -29, POOR, ROOM_DISTURBED"
    })
    void roomNoise(double floor, double loudest, Grade grade, Kind kind) {
        SoundCheck check = new SoundCheck(room(floor, loudest, 0, null), voice(-20, 0.8, -9, 0));
        assertThat(check.findings()).contains(new SoundFinding(grade, kind));
    }

    @ParameterizedTest
    @CsvSource({"-75, GOOD", "-74, FAIR", "-65, FAIR", "-64, POOR"})
    void hum(double level, Grade grade) {
        SoundCheck check = new SoundCheck(room(-70, -68, 0, new Hum(50, level, List.of(1))), voice(-20, 0.8, -9, 0));
        assertThat(check.findings()).contains(new SoundFinding(grade, Kind.HUM));
    }

    @ParameterizedTest
    @CsvSource({"-0.01, GOOD", "0.011, FAIR", "-0.05, FAIR", "0.051, POOR"})
    void offset(double share, Grade grade) {
        SoundCheck check = new SoundCheck(room(-70, -68, share, null), voice(-20, 0.8, -9, 0));
        assertThat(check.findings()).contains(new SoundFinding(grade, Kind.OFFSET));
    }

    @Test
    void findingsComeInTheOrderInWhichToFixThem() {
        SoundCheck check = new SoundCheck(room(-70, -68, 0, null), voice(-20, 0.8, -9, 0));
        assertThat(check.findings())
                .extracting(SoundFinding::kind)
                .containsExactly(
                        Kind.LEVEL_RIGHT,
                        Kind.NO_CLIPPING,
                        Kind.VOICE_TO_ROOM,
                        Kind.ROOM_NOISE,
                        Kind.NO_HUM,
                        Kind.OFFSET);
    }

    @ParameterizedTest
    @CsvSource({"-64, 0.1, false", "-64.1, 0.1, true", "-20, 0.09, true"})
    void whenNobodySpoke(double level, double activity, boolean unspoken) {
        SoundCheck check = new SoundCheck(room(-70, -68, 0, null), voice(level, activity, -9, 0));
        assertThat(check.unspoken()).isEqualTo(unspoken);
        assertThat(check.findings()).hasSize(unspoken ? 4 : 6);
    }

    @Test
    void theWorstFindingGradesTheWhole() {
        RoomReading quiet = room(-70, -68, 0, null);
        assertThat(new SoundCheck(quiet, voice(-20, 0.8, -9, 1)).grade()).isEqualTo(Grade.POOR);
        assertThat(new SoundCheck(quiet, voice(-20, 0.8, -5, 0)).grade()).isEqualTo(Grade.FAIR);
        assertThat(new SoundCheck(quiet, voice(-20, 0.8, -90, 0)).findings()).hasSize(1);
        assertThat(new SoundCheck(quiet, voice(-20, 0.8, -89, 0)).findings()).hasSize(6);
    }

    @Test
    void aRecordingLeavesOutWhatIsSaidWhilePeopleGetReady() {
        CheckRecording recording = new CheckRecording(RATE, 0.5, 1, 2);
        assertThat(hear(recording, 500, 16_384)).isTrue();
        assertThat(hear(recording, 999, 328)).isTrue();
        assertThat(recording.roomHeard()).isFalse();
        hear(recording, 1, 328);
        assertThat(recording.roomHeard()).isTrue();
        hear(recording, 500, 16_384);
        assertThat(recording.voiceSeconds()).isZero();
        hear(recording, 1500, 3277);
        assertThat(recording.voiceSeconds()).isEqualTo(1.5);
        assertThat(recording.check().room().floor()).isCloseTo(-40, within(0.1));
        assertThat(recording.check().voice().peak()).isCloseTo(-20, within(0.1));
        assertThat(hear(recording, 499, 3277)).isTrue();
        assertThat(hear(recording, 1, 3277)).isFalse();
        hear(recording, 100, 32_767);
        assertThat(recording.voiceSeconds()).isEqualTo(2);
        assertThat(recording.check().voice().peak()).isCloseTo(-20, within(0.1));
    }

    @Test
    void aRoomIsMeasuredForASecondAtLeast() {
        assertThat(RoomReading.of(Tones.noise(-50, RATE, 1), RATE).floor()).isCloseTo(-50, within(1.0));
        assertThatThrownBy(() -> RoomReading.of(new float[RATE - 1], RATE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("999");
    }

    /** ITU-T P.56: the long-term level is the active level and the activity, in dB, together. */
    @ParameterizedTest
    @CsvSource({"-20, 1, 1", "-20, 1, 3", "-40, 0.5, 0.6", "-10, 3, 0.3"})
    void levelAndActivityMakeUpTheWholeSound(double level, double tone, double pause) {
        float[] once = Tones.joined(Tones.sine(1000, level, 16_000, tone), Tones.silence(16_000, pause));
        float[] all = Tones.joined(once, once, once, once, once);
        double power = 0;
        for (float sample : all) {
            power += (double) sample * sample / all.length;
        }
        SpeechLevel speech = SpeechLevel.of(all, 16_000);
        assertThat(speech.level() + Decibels.ofPower(speech.activity()))
                .isCloseTo(Decibels.ofPower(power), within(0.01));
        // a hangover of 0.2 s counts as speech, and the envelope falls slowly
        double active = Math.min(tone + pause, tone + 0.25);
        assertThat(speech.activity()).isCloseTo(active / (tone + pause), within(0.06));
    }

    @Test
    void theSoftestAndTheLoudestSpeechHaveALevel() {
        assertThat(SpeechLevel.of(square(Math.scalb(1f, -14)), RATE).level()).isCloseTo(-84.3, within(0.1));
        assertThat(SpeechLevel.of(square(1), RATE).level()).isCloseTo(0, within(0.2));
        assertThat(SpeechLevel.of(new float[RATE], RATE)).isEqualTo(new SpeechLevel(-120, 0));
        assertThat(SpeechLevel.of(new float[0], RATE)).isEqualTo(new SpeechLevel(-120, 0));
    }

    @Test
    void levelsAndAmplitudes() {
        assertThat(Decibels.ofAmplitude(0.1)).isCloseTo(-20, within(1e-9));
        assertThat(Decibels.ofPower(0.1)).isCloseTo(-10, within(1e-9));
        assertThat(Decibels.ofAmplitude(0)).isEqualTo(-120);
        assertThat(Decibels.amplitude(-40)).isCloseTo(0.01, within(1e-9));
        assertThat(Decibels.power(-40)).isCloseTo(0.0001, within(1e-9));
    }

    private static float[] square(float amplitude) {
        float[] samples = new float[10 * RATE];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = i % 2 == 0 ? amplitude : -amplitude;
        }
        return samples;
    }

    /** Lets it hear a square wave of that height; says whether it needs more. */
    /** In the mix of a side that is cut off with a silent one the peaks lie at half of full scale. */
    @Test
    void aSideThatIsCutOffIsFoundThoughTheMixIsNot() {
        CheckRecording recording = new CheckRecording(RATE, 0, 1, 2);
        short[] left = new short[3 * RATE];
        for (int i = RATE; i < left.length; i++) {
            left[i] = i / 5 % 2 == 0 ? Short.MAX_VALUE : -Short.MAX_VALUE;
        }
        recording.hear(AudioBlock.ofSides(s(0), RATE, left, new short[left.length]));
        assertThat(recording.check().voice().peak()).isLessThan(-6);
        assertThat(recording.check().voice().clipped()).isGreaterThan(RATE);
    }

    private static boolean hear(CheckRecording recording, int count, int height) {
        short[] samples = new short[count];
        for (int i = 0; i < count; i++) {
            samples[i] = (short) (i % 2 == 0 ? height : -height);
        }
        return recording.hear(new AudioBlock(s(0), RATE, samples));
    }

    private static RoomReading room(double floor, double loudest, double offset, @Nullable Hum hum) {
        return new RoomReading(floor, loudest, offset, Optional.ofNullable(hum));
    }

    private static VoiceReading voice(double level, double activity, double peak, long clipped) {
        return new VoiceReading(
                new SpeechLevel(level, activity), peak, clipped, new LoudnessReading(-23, 5, -20, -21, peak));
    }
}
