package org.bookholder.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.CheckedFilm;
import org.bookholder.testing.Ffmpeg;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * A film with known faults, made with FFmpeg. Where FFmpeg has a filter for a fault, the filter is the second opinion: {@code
 * blackdetect}, {@code freezedetect}, {@code silencedetect}, {@code ebur128}, with their usual thresholds where ours are the
 * same.
 */
@Execution(ExecutionMode.CONCURRENT)
final class FilmCheckTest {
    /** At 25 frames a second. */
    private static final double FRAME = 0.04;

    private static final String MOVING = "testsrc2=s=320x180:r=25:d=";

    @TempDir
    private static Path folder;

    private static Path film;
    private static FilmCheck.Result result;

    /**
     * Picture: 4 s moving, 1 s black, 4 s moving, 4 s still, 3 s moving, 2 frames red, 3 s moving, 1 frame black, 3 s moving.
     * Sound: a tone of 220 Hz, silent from 5 to 9 s, with a click at 11 s, cut off from 14 to 14.2 s.
     */
    @BeforeAll
    static void makeFilm() throws ProblemException {
        film = Ffmpeg.make(
                folder.resolve("faults.mp4"),
                "-filter_complex",
                MOVING + "4[a];color=black:s=320x180:r=25:d=1[b];" + MOVING + "4[c];smptebars=s=320x180:r=25:d=4[d];"
                        + MOVING + "3[e];color=red:s=320x180:r=25:d=0.08[f];" + MOVING
                        + "3[g];color=black:s=320x180:r=25:d=0.04[h];" + MOVING + "3[i];"
                        + "[a][b][c][d][e][f][g][h][i]concat=n=9,setsar=1[v];"
                        + "aevalsrc='0.1*sin(440*PI*t)*(lt(t,5)+gt(t,9))*if(between(t,14,14.2),30,1)"
                        + "+0.6*between(t,11,11.00003)':s=48000:d=22.12,aformat=sample_fmts=s16:channel_layouts=mono,"
                        + "pan=stereo|c0=c0|c1=c0[s]",
                "-map",
                "[v]",
                "-map",
                "[s]",
                "-c:v",
                "libx264",
                "-preset",
                "ultrafast",
                "-pix_fmt",
                "yuv420p",
                "-c:a",
                "aac",
                "-b:a",
                "192k");
        result = check(film);
    }

    private static FilmCheck.Result check(Path path) throws ProblemException {
        return CheckedFilm.of(path, ProfileForm.usual());
    }

    private static List<Finding> found(ProfileSetting setting) {
        return found(setting.label());
    }

    private static List<Finding> found(String kind) {
        return result.findings().stream()
                .filter(finding -> finding.kind().equals(kind))
                .toList();
    }

    private static Finding.Place place(ProfileSetting setting) {
        return place(setting.label());
    }

    private static Finding.Place place(String kind) {
        assertThat(found(kind)).as(kind).hasSize(1);
        return found(kind).get(0).place().orElseThrow();
    }

    private static void liesAt(Finding.Place place, double start, double end, double slack) {
        assertThat(place.start().seconds()).isCloseTo(start, within(slack));
        assertThat(place.end().seconds()).isCloseTo(end, within(slack));
    }

    private static double said(String text, String pattern) {
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        assertThat(matcher.find()).as(text).isTrue();
        return Double.parseDouble(matcher.group(1));
    }

    @Test
    void blackAsFfmpegFindsIt() {
        String other = Ffmpeg.says(film, "-vf", "blackdetect=d=0.2");
        Finding.Place black = place(ProfileSetting.BLACK);

        liesAt(black, 4, 5, 0.001);
        liesAt(black, said(other, "black_start:([\\d.]+)"), said(other, "black_end:([\\d.]+)"), 0.001);
        assertThat(found(ProfileSetting.BLACK).get(0).grade()).isEqualTo(Grade.MEND);
    }

    @Test
    void stillnessAsFfmpegFindsIt() {
        String other = Ffmpeg.says(film, "-vf", "freezedetect=n=0.001:d=3");
        Finding.Place frozen = place(PictureFinder.STILL);

        liesAt(frozen, 9, 13, 2 * FRAME);
        liesAt(frozen, said(other, "freeze_start: ([\\d.]+)"), said(other, "freeze_end: ([\\d.]+)"), 2 * FRAME);
        assertThat(found(PictureFinder.STILL).get(0).grade()).isEqualTo(Grade.LOOK);
    }

    @Test
    void silenceAsFfmpegFindsIt() {
        String other = Ffmpeg.says(film, "-af", "silencedetect=n=-50dB:d=3");
        Finding.Place silent = place(ProfileSetting.SILENT);

        liesAt(silent, 5, 9, 0.03);
        liesAt(silent, said(other, "silence_start: ([\\d.]+)"), said(other, "silence_end: ([\\d.]+)"), 0.01);
    }

    @Test
    void blipsOfOneAndTwoFramesOnly() {
        List<Finding> blips = found(ProfileSetting.BLIPS);

        assertThat(blips)
                .extracting(Finding::what)
                .containsExactly("2 frames of something else", "one frame of something else");
        liesAt(blips.get(0).place().orElseThrow(), 16, 16.08, 0.001);
        liesAt(blips.get(1).place().orElseThrow(), 19.08, 19.12, 0.001);
        assertThat(blips).allMatch(blip -> blip.grade() == Grade.MEND);
    }

    @Test
    void findsAClickAfterTheCodec() {
        assertThat(found(ProfileSetting.CLICKS))
                .filteredOn(click -> click.place().orElseThrow().start().seconds() < 13)
                .singleElement()
                .satisfies(
                        click -> assertThat(click.place().orElseThrow().start().seconds())
                                .isCloseTo(11, within(0.002)));
    }

    @Test
    void findsClippingAfterTheCodec() {
        // Tolerance of one and a half AAC frames of 1024 samples.
        liesAt(place(ProfileSetting.CLIPPED), 14, 14.2, 0.032);
    }

    @Test
    void loudnessAsFfmpegMeasuresIt() {
        String other = Ffmpeg.says(film, "-af", "ebur128=peak=true");
        String summary = other.substring(other.lastIndexOf("Summary:"));

        assertThat(result.loudness().orElseThrow().integrated())
                .isCloseTo(said(summary, "I:\\s+(-?[\\d.]+)"), within(0.1));
        assertThat(result.loudness().orElseThrow().truePeak())
                .isCloseTo(said(summary, "Peak:\\s+(-?[\\d.]+)"), within(0.3));
    }

    @Test
    void factsAgainstTheProfile() {
        assertThat(found(ProfileSetting.HEIGHT))
                .extracting(Finding::what)
                .containsExactly("the picture is 320 by 180 pixels; allowed is at least 1080");
        assertThat(result.film().container()).isEqualTo("mp4");
        assertThat(result.film().length().seconds()).isCloseTo(22.12, within(0.05));
        for (ProfileSetting fine : List.of(
                ProfileSetting.CONTAINER,
                ProfileSetting.VIDEO,
                ProfileSetting.PIXELS,
                ProfileSetting.SCAN,
                ProfileSetting.SHAPE,
                ProfileSetting.RATE,
                ProfileSetting.AUDIO,
                ProfileSetting.SAMPLE_RATE,
                ProfileSetting.CHANNELS,
                ProfileSetting.NAME,
                ProfileSetting.LENGTH,
                ProfileSetting.SIZE,
                ProfileSetting.MISMATCH)) {
            assertThat(found(fine)).as(fine.label()).isEmpty();
        }
    }

    @Test
    void soundThatIsLongerThanThePicture() throws ProblemException {
        Path longer = Ffmpeg.make(
                folder.resolve("longer.mp4"),
                "-f",
                "lavfi",
                "-i",
                MOVING + "3",
                "-f",
                "lavfi",
                "-i",
                "sine=d=5",
                "-c:a",
                "aac");
        assertThat(check(longer).findings()).anySatisfy(finding -> {
            assertThat(finding.kind()).isEqualTo("mismatch");
            assertThat(finding.what()).startsWith("the sound goes on for 2.0");
        });
    }

    /** A file whose index stands at its beginning can be opened, though its end is missing. */
    @Test
    void aTruncatedFilm() throws ProblemException, IOException {
        Path whole = Ffmpeg.make(
                folder.resolve("whole.mp4"),
                "-f",
                "lavfi",
                "-i",
                MOVING + "10",
                "-f",
                "lavfi",
                "-i",
                "sine=d=10",
                "-movflags",
                "+faststart",
                "-c:a",
                "aac");
        byte[] bytes = Files.readAllBytes(whole);
        Path half = Files.write(folder.resolve("half.mp4"), Arrays.copyOf(bytes, bytes.length / 2));

        assertThat(check(half).findings())
                .anySatisfy(finding -> assertThat(finding.what())
                        .isEqualTo("the film breaks off here, though it says that it lasts 0:00:10.0"));
        assertThat(check(whole).findings()).noneMatch(finding -> finding.kind().equals("file"));
    }

    @Test
    void filmsWithoutPictureOrSound() throws ProblemException {
        Path mute = Ffmpeg.make(folder.resolve("mute.mp4"), "-f", "lavfi", "-i", MOVING + "2");
        assertThat(check(mute).findings()).extracting(Finding::what).contains("it has no sound");
        Path blind = Ffmpeg.make(folder.resolve("blind.m4a"), "-f", "lavfi", "-i", "sine=d=2", "-c:a", "aac");
        assertThat(check(blind).findings()).extracting(Finding::what).contains("it has no picture");
    }

    @Test
    void aFilmThatIsBlackAndSilentThroughout() throws ProblemException {
        Path nothing = Ffmpeg.make(
                folder.resolve("nothing.mp4"),
                "-f",
                "lavfi",
                "-i",
                "color=black:s=320x180:r=25:d=5",
                "-f",
                "lavfi",
                "-i",
                "anullsrc=d=5",
                "-t",
                "5",
                "-c:a",
                "aac");
        assertThat(check(nothing).findings())
                .extracting(Finding::what)
                .contains("the picture is black throughout", "the sound is silent throughout");
    }

    @Test
    void fiveHoursAreReadAndSaidToBeTooLong() throws ProblemException {
        Path hours = Ffmpeg.make(
                folder.resolve("hours.mp4"),
                "-f",
                "lavfi",
                "-i",
                "testsrc2=s=64x36:r=1/4:d=18000",
                "-preset",
                "ultrafast");
        assertThat(check(hours).findings())
                .extracting(Finding::what)
                .contains("it lasts 300.0 minutes; allowed is at most 20");
    }

    /** A phone that was held upright stores a lying picture and the turn. */
    @Test
    void aTurnedFilmIsJudgedAsItIsShown() throws ProblemException {
        Path lying = Ffmpeg.make(folder.resolve("lying.mp4"), "-f", "lavfi", "-i", "testsrc2=s=180x320:r=25:d=1");
        Path turned = Ffmpeg.make(
                folder.resolve("turned.mp4"), "-i", lying.toString(), "-c", "copy", "-metadata:s:v:0", "rotate=90");
        assertThat(check(turned).film().picture().orElseThrow().width()).isEqualTo(320);
        assertThat(check(turned).findings()).noneMatch(finding -> finding.kind().equals("shape"));
        assertThat(check(lying).findings()).anyMatch(finding -> finding.kind().equals("shape"));
    }

    /** FFmpeg's filter {@code photosensitivity} is the second opinion; its measure grows with the flashes of a second. */
    @Test
    void aFlashingFilmIsFoundAndCalmOnesAreNot(@TempDir Path films) throws ProblemException {
        Path flashing = flashing(films, "red", 5);
        assertThat(check(flashing).findings())
                .filteredOn(finding -> finding.kind().equals(FlashFinder.KIND))
                .extracting(Finding::grade)
                .containsExactly(Grade.MEND, Grade.MEND);
        Path calm = flashing(films, "blue", 1);
        assertThat(check(calm).findings()).noneMatch(finding -> finding.kind().equals(FlashFinder.KIND));
        assertThat(result.findings()).noneMatch(finding -> finding.kind().equals(FlashFinder.KIND));
        assertThat(badness(flashing)).isGreaterThan(3 * badness(calm));
    }

    /** The worst moment by FFmpeg's measure. */
    private static double badness(Path film) {
        String said = Ffmpeg.says(film, "-vf", "photosensitivity=bypass=1,metadata=print:file=-");
        return Pattern.compile("photosensitivity\\.badness=([\\d.]+)")
                .matcher(said)
                .results()
                .mapToDouble(result -> Double.parseDouble(result.group(1)))
                .max()
                .orElseThrow();
    }

    private static Path flashing(Path folder, String colour, int hertz) {
        String on = "lt(mod(t*" + hertz + ",1),0.5)";
        return Ffmpeg.make(
                folder.resolve(colour + ".mp4"),
                "-f",
                "lavfi",
                "-i",
                "color=black:s=320x180:r=30:d=3,drawbox=c=" + colour + ":t=fill:enable='" + on + "'",
                "-c:v",
                "libx264",
                "-preset",
                "ultrafast",
                "-pix_fmt",
                "yuv420p");
    }
}
