package org.bookholder.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.sound.SoundFinding.Grade;
import org.bookholder.sound.SoundFinding.Kind;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.wav.WavSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SoundCheckTest {
    private static final int RATE = 16_000;

    @ParameterizedTest
    @CsvSource({"50, -55", "60, -70"})
    void humIsFoundWithItsMultiplesAndLevel(int hertz, double level) {
        float[] room = Tones.mixed(
                Tones.noise(-75, RATE, 10),
                Tones.sine(hertz, level + 3.01, RATE, 10),
                Tones.sine(2 * hertz, level + 3.01, RATE, 10),
                Tones.sine(5 * hertz, level + 3.01 - 10, RATE, 10));

        Hum hum = Hum.of(room, RATE).orElseThrow();

        assertThat(hum.hertz()).isEqualTo(hertz);
        assertThat(hum.tones()).containsExactly(1, 2, 5);
        // Three tones of powers 1, 1 and 0.1 together.
        assertThat(hum.level()).isCloseTo(level + 10 * Math.log10(2.1), within(0.5));
    }

    /** The European grid is kept within 0.2 Hz of its frequency in normal operation (common practice). */
    @Test
    void findsHumOfAGridThatIsSlightlyOff() {
        float[] room = Tones.mixed(Tones.noise(-75, RATE, 10), Tones.sine(100.4, -50, RATE, 10));
        assertThat(Hum.of(room, RATE).map(Hum::hertz)).isEqualTo(Optional.of(50));
    }

    @Test
    void noiseAndToneAreNoHum() {
        assertThat(Hum.of(Tones.noise(-40, RATE, 10), RATE)).isEmpty();
        assertThat(Hum.of(Tones.mixed(Tones.noise(-70, RATE, 10), Tones.sine(440, -30, RATE, 10)), RATE))
                .isEmpty();
    }

    @Test
    void theRoomIsMeasuredWithoutItsOffsetAndASingleNoise() {
        float[] quiet = Tones.noise(-62, RATE, 9);
        float[] room = Tones.joined(quiet, Tones.noise(-30, RATE, 0.3), Tones.noise(-62, RATE, 0.7));
        for (int i = 0; i < room.length; i++) {
            room[i] += 0.02f;
        }

        RoomReading reading = RoomReading.of(room, RATE);

        assertThat(reading.floor()).isCloseTo(-62, within(0.3));
        assertThat(reading.loudest()).isCloseTo(-30, within(0.5));
        assertThat(reading.offset()).isCloseTo(0.02, within(0.001));
    }

    /** What ITU-T P.56 is for: the level of speech, whatever pauses there are. */
    @Test
    void pausesDoNotLowerTheLevelOfSpeech() throws ProblemException {
        float[] speech = demo(20);
        SpeechLevel alone = SpeechLevel.of(speech, RATE);
        SpeechLevel paused = SpeechLevel.of(Tones.joined(speech, Tones.silence(RATE, 20)), RATE);

        assertThat(paused.level()).isCloseTo(alone.level(), within(0.1));
        assertThat(paused.activity()).isCloseTo(alone.activity() / 2, within(0.02));
        assertThat(alone.activity()).isBetween(0.6, 0.98);
    }

    @Test
    void theLevelOfSpeechMovesWithTheGain() throws ProblemException {
        float[] speech = demo(20);
        double before = SpeechLevel.of(speech, RATE).level();
        assertThat(SpeechLevel.of(louder(speech, -13), RATE).level()).isCloseTo(before - 13, within(0.2));
    }

    @Test
    void aSteadyToneIsAsLoudAsItIs() {
        SpeechLevel level = SpeechLevel.of(Tones.sine(1_000, -20, RATE, 10), RATE);
        assertThat(level.level()).isCloseTo(-23.01, within(0.1));
        assertThat(level.activity()).isCloseTo(1, within(0.02));
    }

    @Test
    void aGoodRoomAndVoiceNeedNothing() throws ProblemException {
        SoundCheck check = check(-70, peaking(demo(10), -9));
        assertThat(check.grade()).isEqualTo(Grade.GOOD);
        assertThat(check.findings()).extracting(SoundFinding::grade).containsOnly(Grade.GOOD);
    }

    @ParameterizedTest
    @CsvSource({
        "-70, -3, FAIR, LEVEL_TOO_HIGH",
        "-70, -18, FAIR, LEVEL_TOO_LOW",
        "-70, -30, POOR, LEVEL_TOO_LOW",
        "-55, -9, FAIR, ROOM_NOISE",
        "-45, -9, POOR, ROOM_NOISE",
        "-45, -9, POOR, VOICE_TO_ROOM"
    })
    void problemsAreFound(double floor, double peak, Grade grade, Kind kind) throws ProblemException {
        assertThat(check(floor, peaking(demo(10), peak)).findings()).contains(new SoundFinding(grade, kind));
    }

    @Test
    void aClippedVoiceIsPoor() throws ProblemException {
        float[] voice = peaking(demo(10), 6);
        for (int i = 0; i < voice.length; i++) {
            voice[i] = Math.max(-1, Math.min(1, voice[i]));
        }
        SoundCheck check = check(-70, voice);
        assertThat(check.findings()).contains(new SoundFinding(Grade.POOR, Kind.CLIPPING));
        assertThat(check.voice().clipped()).isGreaterThan(10);
    }

    @Test
    void nobodySpeaksOrNothingComesIn() {
        assertThat(check(-50, Tones.noise(-50, RATE, 10)).findings())
                .contains(new SoundFinding(Grade.POOR, Kind.NO_VOICE));
        assertThat(check(-300, Tones.silence(RATE, 10)).findings())
                .containsExactly(new SoundFinding(Grade.POOR, Kind.NO_SIGNAL));
    }

    private static SoundCheck check(double floor, float[] voice) {
        return new SoundCheck(RoomReading.of(Tones.noise(floor, RATE, 10), RATE), VoiceReading.of(voice, RATE));
    }

    private static float[] peaking(float[] samples, double decibels) {
        double peak = 0;
        for (float sample : samples) {
            peak = Math.max(peak, Math.abs(sample));
        }
        return louder(samples, decibels - Decibels.ofAmplitude(peak));
    }

    private static float[] louder(float[] samples, double decibels) {
        float[] louder = samples.clone();
        for (int i = 0; i < louder.length; i++) {
            louder[i] *= (float) Decibels.amplitude(decibels);
        }
        return louder;
    }

    /** The beginning of the demo's reading. */
    private static float[] demo(int seconds) throws ProblemException {
        try (WavSource source = WavSource.open(java.nio.file.Path.of("demo-scripts/lesson-1.wav"))) {
            assertThat(source.rate()).isEqualTo(RATE);
            float[] samples = new float[seconds * RATE];
            int at = 0;
            while (at < samples.length && source.read() instanceof AudioRead.Samples read) {
                for (short sample : read.block().samples()) {
                    if (at < samples.length) {
                        samples[at++] = sample / 32_768f;
                    }
                }
            }
            return samples;
        }
    }
}
