package org.bookholder.app.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.footage.FileMatch;
import org.bookholder.app.footage.FootageMatching;
import org.bookholder.app.footage.SourceChoices;
import org.bookholder.app.footage.SourceChoices.Wish;
import org.bookholder.app.handoff.HandOffRequest;
import org.bookholder.app.handoff.HandOffService;
import org.bookholder.film.FilmedReading;
import org.bookholder.film.NumberedCamera;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.Heard;
import org.bookholder.handoff.edit.EdlPart;
import org.bookholder.handoff.edit.OtioPart;
import org.bookholder.handoff.sound.SyncedSoundPart;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.StoredExamples;
import org.bookholder.testing.Wav;
import org.bookholder.wording.TakeSourcesText;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two cameras and a recorder of four channels, matched and chosen by the services themselves; film and hand-off read back. */
final class SourceChoicesTest {
    private static final int RATE = 48_000;

    /** Seconds before the take: of the first camera, of the recorder; the second camera begins after the take has begun. */
    private static final double CAMERA = 1.51;

    private static final double RECORDER = 0.8;
    private static final double LATE = -6;

    private static Path first = Path.of("");
    private static Path second = Path.of("");
    private static Path recorder = Path.of("");
    private static short[] inFirst = new short[0];
    private static short[] inThird = new short[0];

    @TempDir
    private Path folder;

    private Path session;
    private Environment here;
    private SourceChoices choices;

    @BeforeAll
    static void record(@TempDir Path shared) throws IOException {
        inFirst = noisy(FilmedReading.sound(CAMERA, 21), 600, 1);
        first = camera(shared.resolve("C0001.MP4"), inFirst);
        second = camera(shared.resolve("C0002.MP4"), noisy(FilmedReading.sound(LATE, 21), 600, 2));
        short[] clean = noisy(FilmedReading.sound(RECORDER, 21), 100, 3);
        Path voice = Wav.write(shared.resolve("voice.wav"), RATE, clean);
        inThird = inverted(clean);
        Path other = Wav.write(shared.resolve("other.wav"), RATE, noisy(new short[21 * RATE], 3000, 4));
        recorder = Ffmpeg.make(
                shared.resolve("RECD0001.WAV"),
                "-i",
                voice.toString(),
                "-i",
                other.toString(),
                "-filter_complex",
                "[0:a][1:a]amerge=inputs=2,pan=4.0|c0=c1|c1=0.5*c1|c2=-1*c0|c3=-0.2*c0+0.6*c1",
                "-c:a",
                "pcm_s24le");
    }

    @BeforeEach
    void match() throws ProblemException {
        session = folder.resolve("session");
        FilmedReading.write(session, folder.resolve("lesson.md").toString());
        here = StoredExamples.here(folder);
        choices = new SourceChoices(here);
        assertThat(match(first, second, recorder))
                .allMatch(match -> match.placed().isPresent());
    }

    @Test
    void whatIsUsedIsSaidAndIsWhatTheFilmHas() throws ProblemException, IOException {
        assertThat(said())
                .satisfiesExactly(
                        picture ->
                                assertThat(picture).isEqualTo("picture: C0001.MP4, the camera that was matched first"),
                        sound -> assertThat(sound)
                                .matches(
                                        "sound: RECD0001\\.WAV, channel 3, because the camera's own is 1[3-7] dB noisier"));
        FilmResult film = film();
        assertThat(FilmText.of(film))
                .anyMatch(line -> line.matches("Sound of take 1: RECD0001\\.WAV, channel 3, because .*"));
        assertThat(new ObjectMapper()
                        .readTree(FilmJson.of(film))
                        .at("/sound/takes/0")
                        .asText())
                .startsWith("Sound of take 1: RECD0001.WAV, channel 3, because");
        assertHeard(film, "RECD0001.WAV", "3", inThird, inFirst);

        choices.choose(session, new Wish(List.of(), Optional.empty(), Optional.of("C0001.MP4")));
        assertThat(said()).contains("sound: C0001.MP4, as you chose");
        match(first, second, recorder);
        assertThat(said()).as("after matching again").contains("sound: C0001.MP4, as you chose");
        assertHeard(film(), "C0001.MP4", "all", inFirst, inThird);

        choices.undo(session);
        assertThat(said()).contains("picture: C0001.MP4, the camera that was matched first");
        assertThat(said().get(1)).startsWith("sound: RECD0001.WAV, channel 3, because");
    }

    @Test
    void oneTakeIsShownAndHeardByOthersInFilmAndHandOff() throws ProblemException, IOException {
        choices.choose(session, new Wish(List.of(1), Optional.of("C0002.MP4"), Optional.of("RECD0001.WAV:1-3")));
        assertThat(said())
                .satisfiesExactly(
                        picture -> assertThat(picture).isEqualTo("picture: C0002.MP4, as you chose"),
                        sound -> assertThat(sound)
                                .isEqualTo("sound: RECD0001.WAV, channels 1 and 3, the second inverted, as you chose"),
                        part -> assertThat(part)
                                .matches("C0002.MP4 has only 6\\.0 to .* s of its .* s: the rest is from C0001.MP4"));
        FilmBoard board = FilmBoard.of(here, SmallFilm.of(session, folder));
        assertThat(board.planning().plan().clips().stream()
                        .map(clip ->
                                clip.shot().orElseThrow().file().getFileName().toString())
                        .distinct())
                .containsExactlyInAnyOrder("C0001.MP4", "C0002.MP4");

        HandOffRequest request =
                HandOffRequest.usual(List.of(new EdlPart(), new OtioPart(), new SyncedSoundPart()), true);
        HandOffService.Written written = new HandOffService(here, request, Interruption.NONE).write(session);
        String edl = Files.readString(written.folder().resolve("noise-to-be-cut.edl"));
        assertThat(edl)
                .containsPattern("C0002 +V ")
                .containsPattern("RECD0001 A ")
                .contains("* AUDIO CHANNELS: 1-3");
        assertThat(Files.readString(written.folder().resolve("noise-to-be-cut.otio")))
                .contains("\"channels\" : \"1-3\"");
        assertThat(written.files())
                .anyMatch(file -> file.endsWith("noise-to-be-cut-sync-c0001-recd0001-ch1-minus-3.wav"));

        choices.choose(session, new Wish(List.of(1), Optional.of("auto"), Optional.of("auto")));
        assertThat(said().get(0)).isEqualTo("picture: C0001.MP4, the camera that was matched first");
    }

    @Test
    void aFileThatIsGoneIsNamedAndAnotherIsUsedMeanwhile() throws ProblemException, IOException {
        Path card = Files.copy(recorder, folder.resolve("RECD0009.WAV"));
        match(card);
        choices.choose(session, new Wish(List.of(), Optional.empty(), Optional.of("RECD0009.WAV:4")));
        assertThat(said()).contains("sound: RECD0009.WAV, channel 4, as you chose");
        Files.delete(card);
        assertThat(said())
                .contains(
                        "sound: RECD0001.WAV, channel 3, instead of RECD0009.WAV:4, which you chose and which is gone")
                .noneMatch(line -> line.contains("put it back"));
        assertThat(TakeSourcesText.gone(choices.show(session).takes()))
                .hasValue(
                        "RECD0009.WAV is not where it was matched any more: put it back, or match it where it is now");
        assertThat(film().remarks())
                .anyMatch(remark -> remark.contains("RECD0009.WAV is not where it was matched any more"));
    }

    @Test
    void whatCannotBeChosenIsSaidInOneLineAndNothingIsChanged() throws ProblemException {
        List<String> before = said();
        refused(
                new Wish(List.of(), Optional.of("C0009.MP4"), Optional.empty()),
                "C0009.MP4: is not one of the matched files");
        refused(new Wish(List.of(), Optional.of("RECD0001.WAV"), Optional.empty()), "RECD0001.WAV: has no picture");
        refused(
                new Wish(List.of(), Optional.of("C0002.MP4"), Optional.of("RECD0001.WAV:5")),
                "RECD0001.WAV: has no channel 5; it has 4 channels");
        refused(new Wish(List.of(), Optional.empty(), Optional.of("RECD0001.WAV:x")), "'x' is no channel");
        refused(new Wish(List.of(), Optional.empty(), Optional.of("no\0path:1")), "is not one of the matched files");
        refused(new Wish(List.of(2), Optional.empty(), Optional.of("C0001.MP4")), "there is no take 2; it has take 1");
        assertThat(said()).isEqualTo(before);
        assertThatThrownBy(() -> choices.undo(session)).hasMessageContaining("no picture or sound was chosen in it");
    }

    private void refused(Wish wish, String why) {
        assertThatThrownBy(() -> choices.choose(session, wish)).hasMessageContaining(why);
    }

    private List<FileMatch> match(Path... files) throws ProblemException {
        return new FootageMatching(here, progress -> {}, Interruption.NONE).match(session, List.of(files), each -> {});
    }

    private List<String> said() throws ProblemException {
        return TakeSourcesText.lines(choices.show(session).takes().get(0));
    }

    private FilmResult film() throws ProblemException, IOException {
        return new FilmService(here, SmallFilm.of(session, folder), progress -> {}, Interruption.NONE)
                .make(FilmObstacle.Told.TERMINAL, obstacle -> {});
    }

    /** The recorder is inverted against the camera, so that only the sound of the one that is heard is like the film's, but for its rumble cut. */
    private void assertHeard(FilmResult film, String name, String channels, short[] source, short[] other)
            throws IOException {
        Path voice = folder.resolve("heard.s16");
        Ffmpeg.make(
                voice, "-i", film.made().file().toString(), "-map", "0:a", "-ac", "1", "-ar", "48000", "-f", "s16le");
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(voice)).order(ByteOrder.LITTLE_ENDIAN);
        short[] samples = new short[bytes.remaining() / 2];
        bytes.asShortBuffer().get(samples);
        for (FilmClip clip : film.plan().clips()) {
            Heard heard = clip.heard().orElseThrow();
            assertThat(heard.file().getFileName()).hasToString(name);
            assertThat(heard.channels().orElseThrow().text()).isEqualTo(channels);
            int at = (int) film.plan().tickOf(clip.start()) + RATE / 5;
            int from = (int) Math.round(heard.from()) + RATE / 5;
            double shift = source == inThird ? CAMERA - RECORDER : RECORDER - CAMERA;
            assertThat(likeness(samples, at, source, from)).isGreaterThan(0.75);
            assertThat(likeness(samples, at, other, from + (int) Math.round(shift * RATE)))
                    .isLessThan(0.4);
        }
    }

    private static double likeness(short[] film, int at, short[] source, int from) {
        return IntStream.rangeClosed(-96, 96)
                .mapToDouble(late -> {
                    double both = 0;
                    double one = 0;
                    double two = 0;
                    for (int i = 0; i < RATE / 2; i++) {
                        double a = film[at + i + late];
                        double b = source[from + i];
                        both += a * b;
                        one += a * a;
                        two += b * b;
                    }
                    return both / Math.sqrt(one * two);
                })
                .max()
                .orElseThrow();
    }

    private static short[] inverted(short[] samples) {
        short[] inverted = new short[samples.length];
        for (int i = 0; i < samples.length; i++) {
            inverted[i] = (short) -samples[i];
        }
        return inverted;
    }

    /** With a low noise of its own, which passes every encoder. */
    private static short[] noisy(short[] clean, double level, long seed) {
        Random random = new Random(seed);
        short[] noisy = new short[clean.length];
        double smooth = 0;
        for (int i = 0; i < noisy.length; i++) {
            smooth = 0.8 * smooth + 0.2 * random.nextGaussian();
            noisy[i] = (short) (clean[i] + level * smooth);
        }
        return noisy;
    }

    private static Path camera(Path file, short[] sound) {
        return NumberedCamera.make(
                file, 525, "25", sound, "-c:v", "libx264", "-preset", "ultrafast", "-g", "25", "-c:a", "aac");
    }
}
