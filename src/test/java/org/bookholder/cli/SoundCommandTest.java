package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioRead;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SoundCommandTest {
    private static final int RATE = Program.RATE;

    @TempDir
    private Path folder;

    private Program program;

    @BeforeEach
    void begin() {
        program = new Program(folder);
    }

    @Test
    void aGoodRoomAndVoice() throws ProblemException {
        assertThat(program.run("sound", "--audio", recording(5, 20, 1))).isZero();
        assertThat(program.out())
                .contains("level          good  peaks at -", "hum            good  none", "LUFS")
                .endsWith("The sound is good: begin.\n");
        assertThat(program.err()).isEmpty();
    }

    @Test
    void aNoisyRoomAndAClippedVoice() throws ProblemException {
        assertThat(program.run("sound", "--audio", recording(400, 20, 8))).isEqualTo(3);
        assertThat(program.out())
                .contains("clipping       poor", "room noise     poor", "try: turn the gain down")
                .endsWith("Don't record yet. Fix whatever is marked poor, then check again.\n");
    }

    @Test
    void theResultAsJson() throws ProblemException, IOException {
        assertThat(program.run("sound", "--json", "--audio", recording(400, 20, 8)))
                .isEqualTo(3);
        JsonNode json = new ObjectMapper().readTree(program.out());
        assertThat(json.at("/verdict").asText()).isEqualTo("poor");
        // The noise was made at 400 steps of 32,768.
        assertThat(json.at("/room/floor").asDouble()).isCloseTo(20 * Math.log10(400 / 32_768.0), within(0.2));
        assertThat(json.at("/room/hum").isNull()).isTrue();
        assertThat(json.at("/voice/clipped").asInt()).isPositive();
        assertThat(json.at("/voice/peak").asDouble()).isCloseTo(0, within(0.01));
        assertThat(json.at("/remarks")).hasSize(7);
        assertThat(json.at("/path/sides").asText()).isEqualTo("both");
        assertThat(json.at("/path/echo_seconds").asDouble()).isLessThan(0.3);
        assertThat(json.at("/noise/parts/0/kind").asText()).isEqualTo("hiss");
        // White noise has the same power in each hertz: 3.01 dB more for each octave, by thirds.
        assertThat(json.at("/noise/bands/22/level").asDouble()
                        - json.at("/noise/bands/13/level").asDouble())
                .isCloseTo(9.03, within(1.5));
        assertThat(json.at("/sources/0").asText()).contains("Oral History Association");
        assertThat(program.err()).contains("Sound check: check.wav");
    }

    @Test
    void throughTheMicrophone() throws ProblemException {
        short[] second = new short[RATE];
        program.equipment.hasMicrophone(FakeAudioSource.of(RATE, joined(second, samples(5, 4, 1, 4, second))));
        assertThat(program.run("sound", "--room", "4", "--voice", "4")).isZero();
        assertThat(program.out()).contains("Sound check: a fake microphone", "Say nothing for 5 s");
    }

    @Test
    void aMicrophoneThatIsPulledOut() {
        program.equipment.hasMicrophone(
                FakeAudioSource.of(RATE, new short[RATE]).then(new AudioRead.Gone("the microphone was unplugged")));
        refuses("no more sound came in (the microphone was unplugged)", "sound");
    }

    @Test
    void aMicrophoneThatIsNotTheOneChosen() throws ProblemException, IOException {
        Path settings = Files.createDirectories(folder.resolve("settings"));
        Files.writeString(settings.resolve("home.txt"), "microphone: Desk microphone\n");
        short[] second = new short[RATE];
        program.equipment.hasMicrophone(FakeAudioSource.of(RATE, joined(second, samples(5, 4, 1, 4, second))));
        program.run("sound", "--room", "4", "--voice", "4");
        assertThat(program.out())
                .contains("microphone     fair  this is a fake microphone; Desk microphone is chosen for this machine");
        program.equipment.hasMicrophone(FakeAudioSource.of(RATE, joined(second, samples(5, 4, 1, 4, second)))
                .named("USB Desk Microphone"));
        program.run("sound", "--room", "4", "--voice", "4");
        assertThat(program.out()).doesNotContain("is chosen for this machine");
    }

    @Test
    void noMicrophone() {
        refuses("there is no microphone", "sound");
    }

    @Test
    void aRecordingThatIsTooShort() {
        refuses("is shorter than 10 s of room and 3 s of voice", "sound", "--audio", program.recording("short.wav", 5));
    }

    @ParameterizedTest
    @CsvSource({"--room, 1", "--room, NaN", "--voice, 500"})
    void secondsOutOfRange(String option, String seconds) {
        refuses("give seconds from 3 to", "sound", option, seconds);
    }

    @Test
    void aRecordingAndAMicrophone() {
        refuses("takes the microphone's place", "sound", "--audio", "x.wav", "--microphone", "desk");
    }

    private void refuses(String message, String... arguments) {
        assertThat(program.run(arguments)).isEqualTo(2);
        assertThat(program.err()).startsWith("bookholder: ").contains(message).hasLineCount(1);
    }

    private String recording(double noise, int voice, double gain) throws ProblemException {
        return Wav.write(folder.resolve("check.wav"), RATE, samples(noise, 10, gain, voice, new short[0]))
                .toString();
    }

    /** Seconds of room with noise of so many steps, something between, and seconds of the demo's voice, peaking at -9 dBFS. */
    private static short[] samples(double noise, int room, double gain, int voice, short[] between)
            throws ProblemException {
        Random random = new Random(7);
        short[] quiet = new short[room * RATE];
        for (int i = 0; i < quiet.length; i++) {
            quiet[i] = (short) Math.round(noise * random.nextGaussian());
        }
        short[] loud = Arrays.copyOf(Wav.demo(30), voice * RATE);
        int peak = 0;
        for (short sample : loud) {
            peak = Math.max(peak, Math.abs(sample));
        }
        for (int i = 0; i < loud.length; i++) {
            double value = loud[i] * gain * 0.355 * 32_768 / peak;
            loud[i] = (short) Math.max(-32_768, Math.min(32_767, Math.round(value)));
        }
        return joined(quiet, joined(between, loud));
    }

    private static short[] joined(short[] a, short[] b) {
        short[] both = Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, both, a.length, b.length);
        return both;
    }
}
