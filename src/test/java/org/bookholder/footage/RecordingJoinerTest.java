package org.bookholder.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bookholder.footage.RecordingJoiner.Apart;
import org.bookholder.footage.RecordingJoiner.Reason;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files of ten minutes each, unless a test says otherwise; names and times as cameras and recorders write them (common practice). */
final class RecordingJoinerTest {
    private static final StreamTime LENGTH = s(600);
    private static final Optional<Footage.Picture> PICTURE =
            Optional.of(new Footage.Picture(1920, 1080, FrameRate.FPS_25, false));
    private static final Optional<Footage.Sound> SOUND = Optional.of(new Footage.Sound(48_000, 2, "aac"));

    @Test
    void aRecordingOfThreeFilesIsPutInOrder() throws ProblemException {
        assertThat(joined(at("C0003.MP4", "10:20:00"), at("C0001.MP4", "10:00:00"), at("C0002.MP4", "10:10:00")))
                .containsExactly("C0001.MP4 C0002.MP4 C0003.MP4");
    }

    @Test
    void otherFilesStayWhereTheyWereNamed() throws ProblemException {
        assertThat(joined(
                        at("C0007.MP4", "09:00:00"),
                        at("C0002.MP4", "10:10:00"),
                        at("C0009.MP4", "11:00:00"),
                        at("C0001.MP4", "10:00:00")))
                .containsExactly("C0007.MP4", "C0001.MP4 C0002.MP4", "C0009.MP4");
    }

    @ParameterizedTest
    @CsvSource({
        "C0001.MP4, C0002.MP4, true",
        "A001C009_260301.MXF, A001C010_260301.MXF, true",
        "GR010034.MP4, GR020034.MP4, true",
        "DSC9999.MOV, DSC0001.MOV, true",
        "DSC9999.MOV, DSC0000.MOV, true",
        "DSC9999.MOV, DSC10000.MOV, false",
        "C0001.MP4, C0003.MP4, false",
        "C0002.MP4, C0001.MP4, false",
        "C0001.MP4, D0002.MP4, false",
        "C0001.MP4, C0002.MOV, false",
        "GR010034.MP4, GR010035.WAV, false",
        "CAM1-0001.MP4, CAM2-0002.MP4, false",
        "interview.mp4, interview.mov, false"
    })
    void theNumberInTheNameGoesOn(String first, String then, boolean joined) throws ProblemException {
        assertThat(joined(at(first, "10:00:00"), at(then, "10:10:00"))).hasSize(joined ? 1 : 2);
    }

    @ParameterizedTest
    @CsvSource({
        "10:10:00, true",
        "10:10:02, true",
        "10:09:58, true",
        "10:10:03, false",
        "10:10:10, false",
        "10:00:00, false"
    })
    void theNextFileBeginsWhenTheOneBeforeEnds(String time, boolean joined) throws ProblemException {
        assertThat(joined(at("C0001.MP4", "10:00:00"), at("C0002.MP4", time))).hasSize(joined ? 1 : 2);
    }

    /** A recorder's own count of samples, which begins again at midnight. */
    @ParameterizedTest
    @CsvSource({"1200, 1800, true", "1200, 1800.04, true", "1200, 1800.1, false", "86100, 300, true"})
    void aRecordersCountGoesOn(double first, double then, boolean joined) throws ProblemException {
        assertThat(joined(recorder("REC_01.WAV", first), recorder("REC_02.WAV", then)))
                .hasSize(joined ? 1 : 2);
    }

    @ParameterizedTest
    @CsvSource({
        "01:00:00:00, 01:10:00:00, true",
        "01:00:00:00, 01:10:00:01, false",
        "23:55:00:00, 00:05:00:00, true",
    })
    void timecodeGoesOnToTheFrame(String first, String then, boolean joined) throws ProblemException {
        assertThat(joined(
                        camera("C0001.MP4", PICTURE, Optional.of(first), time("10:00:00")),
                        camera("C0002.MP4", PICTURE, Optional.of(then), time("10:10:00"))))
                .hasSize(joined ? 1 : 2);
    }

    /** It may run only while the camera records, so that it goes on over every stop. */
    @Test
    void timecodeAloneProvesNothing() throws ProblemException {
        assertThat(joined(
                        camera("C0001.MP4", PICTURE, Optional.of("01:00:00:00"), Optional.empty()),
                        camera("C0002.MP4", PICTURE, Optional.of("01:10:00:00"), Optional.empty())))
                .hasSize(2);
    }

    @Test
    void filesOfAnotherKindOrFolderAreNotJoined() throws ProblemException {
        Footage first = at("C0001.MP4", "10:00:00");
        Footage larger = camera(
                "C0002.MP4",
                Optional.of(new Footage.Picture(3840, 2160, FrameRate.FPS_25, false)),
                Optional.empty(),
                time("10:10:00"));
        Footage faster = camera(
                "C0002.MP4",
                Optional.of(new Footage.Picture(1920, 1080, FrameRate.FPS_50, false)),
                Optional.empty(),
                time("10:10:00"));
        Footage mono = new Footage(
                Path.of("card/C0002.MP4"),
                LENGTH,
                PICTURE,
                Optional.of(new Footage.Sound(48_000, 1, "aac")),
                Optional.empty(),
                Optional.empty(),
                time("10:10:00"));
        for (Footage other : List.of(larger, faster, mono, at("../other/C0002.MP4", "10:10:00"))) {
            assertThat(joined(first, other)).as("%s", other).hasSize(2);
        }
    }

    @Test
    void soundThatDoesNotGoOnKeepsThemApart() throws ProblemException {
        List<Footage> files = List.of(at("C0001.MP4", "10:00:00"), at("C0002.MP4", "10:10:00"));
        assertThat(new RecordingJoiner((first, then) -> false, false).join(files))
                .hasSize(2);
    }

    @Test
    void aFileThatIsNamedTwiceIsUsedOnce() throws ProblemException {
        Footage first = at("C0001.MP4", "10:00:00");
        assertThat(joined(first, first, at("C0002.MP4", "10:10:00")))
                .containsExactly("C0001.MP4 C0002.MP4", "C0001.MP4");
    }

    @Test
    void filesThatDontTellTheTimeAreNamedAndJoinedByTheirNumbersIfSomebodySaysSo() throws ProblemException {
        List<Footage> files = List.of(untimed("C0002.MP4"), untimed("C0001.MP4"), untimed("C0007.MP4"));
        RecordingJoiner careful = new RecordingJoiner((first, then) -> true, false);
        assertThat(careful.apart(careful.join(files)))
                .containsExactly(new Apart(files.get(1), files.get(0), Reason.NO_TIME));
        RecordingJoiner told = new RecordingJoiner((first, then) -> true, true);
        assertThat(told.join(files))
                .extracting(WholeRecording::name)
                .containsExactly("C0001.MP4 and C0002.MP4", "C0007.MP4");
        assertThat(told.apart(told.join(files))).isEmpty();
    }

    @Test
    void filesThatGoOnInTimeButNotInSoundAreNamedAndOthersAreNot() throws ProblemException {
        List<Footage> files = List.of(at("C0001.MP4", "10:00:00"), at("C0002.MP4", "10:10:00"));
        RecordingJoiner broken = new RecordingJoiner((first, then) -> false, false);
        assertThat(broken.apart(broken.join(files)))
                .containsExactly(new Apart(files.get(0), files.get(1), Reason.SOUND));
        List<Footage> takes = List.of(at("C0001.MP4", "10:00:00"), at("C0002.MP4", "11:00:00"));
        RecordingJoiner joiner = new RecordingJoiner((first, then) -> true, true);
        assertThat(joiner.join(takes)).as("the time says that they are two").hasSize(2);
        assertThat(joiner.apart(joiner.join(takes))).isEmpty();
    }

    /** To ask for files to be joined by their numbers would join them as little. */
    @Test
    void filesWhoseTimecodeDoesNotGoOnAreNotNamed() throws ProblemException {
        List<Footage> files = List.of(
                camera("C0001.MP4", PICTURE, Optional.of("01:00:00:00"), Optional.empty()),
                camera("C0002.MP4", PICTURE, Optional.of("01:12:00:00"), Optional.empty()));
        for (boolean byNumbers : new boolean[] {false, true}) {
            RecordingJoiner joiner = new RecordingJoiner((first, then) -> true, byNumbers);
            assertThat(joiner.join(files)).hasSize(2);
            assertThat(joiner.apart(joiner.join(files))).isEmpty();
        }
    }

    @Test
    void filesThatAreToBeJoinedByTheirNumbersAndDontGoOnInSoundAreNamed() throws ProblemException {
        List<Footage> files = List.of(untimed("C0001.MP4"), untimed("C0002.MP4"));
        RecordingJoiner joiner = new RecordingJoiner((first, then) -> false, true);
        assertThat(joiner.apart(joiner.join(files)))
                .containsExactly(new Apart(files.get(0), files.get(1), Reason.SOUND));
    }

    private static Footage untimed(String name) {
        return camera(name, PICTURE, Optional.empty(), Optional.empty());
    }

    private static List<String> joined(Footage... files) throws ProblemException {
        return new RecordingJoiner((first, then) -> true, false)
                .join(Arrays.asList(files)).stream()
                        .map(recording -> String.join(
                                " ",
                                recording.parts().stream().map(Footage::name).toList()))
                        .toList();
    }

    private static Footage at(String name, String time) {
        return camera(name, PICTURE, Optional.empty(), time(time));
    }

    private static Optional<Instant> time(String time) {
        return Optional.of(Instant.parse("2026-03-01T" + time + "Z"));
    }

    private static Footage camera(
            String name, Optional<Footage.Picture> picture, Optional<String> timecode, Optional<Instant> recorded) {
        return new Footage(Path.of("card", name), LENGTH, picture, SOUND, timecode, Optional.empty(), recorded);
    }

    private static Footage recorder(String name, double sinceMidnight) {
        return new Footage(
                Path.of("card", name),
                LENGTH,
                Optional.empty(),
                Optional.of(new Footage.Sound(48_000, 2, "pcm_s24le")),
                Optional.empty(),
                Optional.of(s(sinceMidnight)),
                Optional.empty());
    }
}
