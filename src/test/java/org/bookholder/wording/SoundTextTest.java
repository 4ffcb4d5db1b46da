package org.bookholder.wording;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.bookholder.sound.Hum;
import org.bookholder.sound.LoudnessReading;
import org.bookholder.sound.RoomNoise;
import org.bookholder.sound.RoomReading;
import org.bookholder.sound.Sides;
import org.bookholder.sound.SoundCheck;
import org.bookholder.sound.SoundFinding;
import org.bookholder.sound.SoundFinding.Grade;
import org.bookholder.sound.SoundFinding.Kind;
import org.bookholder.sound.SoundPath;
import org.bookholder.sound.SpeechLevel;
import org.bookholder.sound.VoiceReading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SoundTextTest {
    private static final RoomReading QUIET = room(-70, -68, 0, Optional.empty());

    @Test
    void saysWhatWasMeasuredAndNothingElseWhereAllIsGood() {
        assertThat(rows(new SoundCheck(QUIET, voice(-9, 0))))
                .containsExactly(
                        "level: peaks at -9.0 dBFS, speech at -20.0 dBFS",
                        "clipping: none",
                        "voice to room: 50 dB",
                        "room noise: -70.0 dBFS",
                        "hum: none",
                        "offset: none");
    }

    @Test
    void saysWhatToTryAboutEverythingElse() {
        RoomReading loud = room(-48, -46, -0.02, Optional.of(new Hum(50, -60, List.of(1))));
        assertThat(rows(new SoundCheck(loud, voice(-3, 12))))
                .containsExactly(
                        "level: peaks at -3.0 dBFS, speech at -20.0 dBFS; turn the gain down by about 6 dB",
                        "clipping: 12 samples cut off at full scale; turn the gain down until none is; what is cut off"
                                + " can't be restored later",
                        "voice to room: 28 dB; go closer to the microphone, or make the room quieter",
                        "room noise: -48.0 dBFS; switch off fans and machines, shut the window, hang up something soft",
                        "hum: 50 Hz and its multiples, -60.0 dBFS; move cables away from power supplies, try another"
                                + " socket, a balanced cable or the battery",
                        "offset: 2.0 % of full scale; try another input or sound card; a high-pass filter removes it"
                                + " later");
    }

    @ParameterizedTest
    @CsvSource({
        "-0.9, turn the gain down by about 8 dB",
        "-5.9, turn the gain down by about 3 dB",
        "-12.1, 'turn the gain up by about 3 dB, or go closer to the microphone'",
        "-24, 'turn the gain up by about 15 dB, or go closer to the microphone'"
    })
    void theGainIsChangedToTheMiddleOfTheRange(double peak, String advice) {
        SoundCheck check = new SoundCheck(QUIET, voice(peak, 0));
        assertThat(SoundText.of(check, check.findings().get(0)).advice()).isEqualTo(advice);
    }

    @Test
    void anOffsetThatNobodyNoticesIsNone() {
        SoundFinding offset = new SoundFinding(Grade.GOOD, Kind.OFFSET);
        assertThat(Stream.of(0.0004, 0.0005, -0.01)
                        .map(share -> new SoundCheck(room(-70, -68, share, Optional.empty()), voice(-9, 0)))
                        .map(check -> SoundText.of(check, offset).figure()))
                .containsExactly("none", "0.1 % of full scale", "1.0 % of full scale");
    }

    @Test
    void aSingleNoiseIsNamed() {
        SoundCheck check = new SoundCheck(room(-70, -54, 0, Optional.empty()), voice(-9, 0));
        assertThat(rows(check))
                .contains(
                        "room noise: -70.0 dBFS, but once -54.0 dBFS; find out what made the noise, and measure again");
    }

    @Test
    void saysWhatLiesBetweenTheVoiceAndTheProgram() {
        assertThat(firstRow(Sides.Kind.OPPOSED, OptionalInt.empty()))
                .isEqualTo(
                        "channels: left and right cancel each other; set the input to one channel (mono), or use another cable: a"
                                + " plug or a cable is wired the wrong way round");
        assertThat(firstRow(Sides.Kind.RIGHT_ONLY, OptionalInt.empty()))
                .startsWith("channels: the voice comes in on the right only; set the input to one channel");
        assertThat(firstRow(Sides.Kind.BOTH, OptionalInt.of(4000)))
                .startsWith("voice band: nothing above 4 kHz; use another microphone");
    }

    private static String firstRow(Sides.Kind sides, OptionalInt limit) {
        SoundPath path = new SoundPath(sides, limit, OptionalDouble.empty(), Optional.empty());
        return rows(new SoundCheck(QUIET, voice(-9, 0), RoomNoise.UNKNOWN, path))
                .get(0);
    }

    @Test
    void namesWhatStandsOutOfTheRoomsNoise() {
        RoomNoise noise = new RoomNoise(List.of(), List.of(new RoomNoise.Part(RoomNoise.Kind.TONE, 237, 237, -50)));
        SoundCheck check = new SoundCheck(room(-48, -46, 0, Optional.empty()), voice(-9, 0), noise, SoundPath.PLAIN);
        assertThat(rows(check))
                .contains(
                        "room noise: -48.0 dBFS, mostly a steady tone of 237 Hz, as of a fridge, a motor or a charger, -50 dBFS;"
                                + " look for a fridge, a motor, a charger or a screen, and switch it off");
    }

    @Test
    void saysWhyThereIsNoVoice() {
        VoiceReading silent = new VoiceReading(new SpeechLevel(-70, 0), -60, 0, loudness());
        assertThat(rows(new SoundCheck(QUIET, silent)))
                .startsWith(
                        "voice: none was heard; read aloud while the voice is measured, or choose another microphone");
        assertThat(rows(new SoundCheck(QUIET, voice(-120, 0))))
                .containsExactly("sound: nothing comes in; check the cable, the mute switch, and that the right"
                        + " microphone is chosen");
    }

    @Test
    void theVerdictNamesTheGradeThatItIsAbout() {
        assertThat(SoundText.verdict(Grade.GOOD)).contains(SoundText.of(Grade.GOOD));
        assertThat(SoundText.verdict(Grade.FAIR)).contains("marked " + SoundText.of(Grade.FAIR));
        assertThat(SoundText.verdict(Grade.POOR)).contains("marked " + SoundText.of(Grade.POOR));
    }

    private static List<String> rows(SoundCheck check) {
        return check.findings().stream()
                .map(finding -> SoundText.of(check, finding))
                .map(text ->
                        text.about() + ": " + text.figure() + (text.advice().isEmpty() ? "" : "; ") + text.advice())
                .toList();
    }

    private static RoomReading room(double floor, double loudest, double offset, Optional<Hum> hum) {
        return new RoomReading(floor, loudest, offset, hum);
    }

    private static VoiceReading voice(double peak, long clipped) {
        return new VoiceReading(new SpeechLevel(-20, 0.8), peak, clipped, loudness());
    }

    private static LoudnessReading loudness() {
        return new LoudnessReading(-23, 5, -20, -21, -9);
    }
}
