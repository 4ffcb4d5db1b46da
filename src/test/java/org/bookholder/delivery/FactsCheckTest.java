package org.bookholder.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.footage.Film;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a film's own description says, against the usual profile. */
final class FactsCheckTest {
    private static final Film.Picture PICTURE =
            new Film.Picture("h264", "yuv420p", 1920, 1080, 16 / 9.0, false, FrameRate.FPS_25, false, 8_000_000);
    private static final Film.Sound SOUND = new Film.Sound("aac", 48_000, 2, 192_000, List.of(1.0, 1.0));

    @Test
    void nothingIsWrongWithAUsualFilm() {
        assertThat(found("lesson-1.mp4", 500_000_000, "mp4", 10, PICTURE, SOUND))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "lesson.mov, 500, mov, 10, mend container: the file is of the kind mov",
        "lesson.mp4, 2001, mp4, 10, mend size-mb: the file has 2001 MB; allowed is at most 2000",
        "lesson.mp4, 500, mp4, 20.1, mend minutes: it lasts 20.1 minutes; allowed is at most 20",
        "my lesson.mp4, 500, mp4, 10, mend name: the name does not look like {lesson}.{ending}: the space is not allowed"
    })
    void whatIsWrongWithTheFile(String name, double megabytes, String container, double minutes, String finding) {
        assertThat(found(name, Math.round(megabytes * 1e6), container, minutes, PICTURE, SOUND))
                .containsExactly(finding);
    }

    @Test
    void whatIsWrongWithThePicture() {
        Film.Picture picture =
                new Film.Picture("vp9", "yuv422p10le", 960, 720, 4 / 3.0, true, new FrameRate(12, 1), true, 400_000);
        assertThat(found("a.mp4", 1, "mp4", 1, picture, SOUND))
                .containsExactly(
                        "mend video: the picture is stored as vp9",
                        "mend pixels: pixels are stored as yuv422p10le",
                        "mend scan: the picture is interlaced",
                        "mend height: the picture is 960 by 720 pixels; allowed is at least 1080",
                        "mend shape: the picture's shape is 1.333 to 1; allowed is 1.77 to 1.78",
                        "mend rate: it has 12 pictures a second",
                        "look rate: the picture rate wavers",
                        "look video-kbps: the picture has only 400 kb/s; usual is 500 to 20000");
    }

    /** A limit that somebody set is meant, whatever the picture needs; so is the usual upper end. */
    @Test
    void aBitRateOutsideALimitIsToBeMended() {
        assertThat(found("a.mp4", 1, "mp4", 1, withBitRate(20_001_000), SOUND))
                .containsExactly("mend video-kbps: the picture has 20001 kb/s; allowed is 500 to 20000");
        Profile own = new Profile(
                "own", Map.of(ProfileSetting.VIDEO_KBPS, new Limit.Between(5000, Double.POSITIVE_INFINITY)));
        assertThat(described(own, "a.mp4", 1, "mp4", 1, withBitRate(400_000), SOUND))
                .containsExactly("mend video-kbps: the picture has 400 kb/s; allowed is at least 5000");
    }

    @ParameterizedTest
    @CsvSource({
        "01 Welcome.mp4, ''",
        "01 Welcome-2.mp4, ''",
        "01 welcome_v2.mp4, ''",
        "01-Welcome.mp4, ''",
        "01 Welcome (final).mp4, call it 01 Welcome-final.mp4",
        "02 Goodbye.mp4, call it 02-Goodbye.mp4"
    })
    void aFilmMayHaveTheNameOfItsScript(String name, String remedy) {
        assertThat(remedies(ProfileForm.usual().ofLesson("01 Welcome"), name))
                .isEqualTo(remedy.isEmpty() ? List.of() : List.of(remedy));
    }

    @Test
    void theRemedyOfANameIsTheNameThatIsRight() {
        assertThat(remedies(ProfileForm.usual(), "01 Welcome.mp4")).containsExactly("call it 01-Welcome.mp4");
        assertThat(remedies(ProfileForm.usual(), "Überall (neu).MP4")).containsExactly("call it Uberall-neu.mp4");
        assertThat(remedies(ProfileForm.usual(), "?.mp4")).containsExactly("rename the file");
        Profile own = new Profile("own", Map.of(ProfileSetting.NAME, Limit.Matching.of("[a-z]+[.]mp4")));
        assertThat(remedies(own.ofLesson("01 Welcome"), "01 Welcome.mp4"))
                .as("a regular expression is meant as it is written")
                .containsExactly("rename the file");
    }

    private static List<String> remedies(Profile profile, String name) {
        Findings findings = new Findings();
        new FactsCheck(film(name, 1, "mp4", 1, PICTURE, SOUND), profile, findings).check();
        return findings.all().stream().map(Finding::remedy).toList();
    }

    private static Film.Picture withBitRate(long bits) {
        return new Film.Picture("h264", "yuv420p", 1920, 1080, 16 / 9.0, false, FrameRate.FPS_25, false, bits);
    }

    @Test
    void whatIsWrongWithTheSound() {
        Film.Sound sound = new Film.Sound("mp3", 32_000, 6, 64_000, List.of(1.0, 1.0, 1.0, 0.0, 1.41, 1.41));
        assertThat(found("a.mp4", 1, "mp4", 1, PICTURE, sound))
                .containsExactly(
                        "mend audio: the sound is stored as mp3",
                        "mend sample-rate: it has 32000 samples a second",
                        "mend channels: the sound has 6 channels",
                        "mend audio-kbps: the sound has 64 kb/s; allowed is 96 to 512");
    }

    @Test
    void aBitRateThatIsNotKnownIsNotJudged() {
        assertThat(found("a.mp4", 1, "mp4", 1, withBitRate(0), new Film.Sound("aac", 48_000, 1, 0, List.of(1.0))))
                .isEmpty();
    }

    @Test
    void aFilmWithoutPictureOrSoundLacksIt() {
        Findings findings = new Findings();
        Film film = new Film(Path.of("a.mp4"), 1, "mp4", StreamTime.ofSeconds(60), Optional.empty(), Optional.empty());
        new FactsCheck(film, ProfileForm.usual(), findings).check();
        assertThat(findings.all())
                .extracting(SoundFinderTest::described)
                .containsExactly("mend video: it has no picture", "mend audio: it has no sound");
        assertThat(findings.all()).extracting(Finding::remedy).allMatch(remedy -> remedy.startsWith("export it with"));
    }

    @Test
    void theRemedyNamesWhatIsAllowed() {
        Findings findings = new Findings();
        Film film = new Film(
                Path.of("/films/a.mp4"),
                1,
                "mp4",
                StreamTime.ofSeconds(60),
                Optional.of(PICTURE),
                Optional.of(new Film.Sound("aac", 22_050, 2, 192_000, List.of(1.0, 1.0))));
        new FactsCheck(film, ProfileForm.usual(), findings).check();
        assertThat(findings.all()).extracting(Finding::remedy).containsExactly("export it with 44100 or 48000");
    }

    private static List<String> found(
            String name, long bytes, String container, double minutes, Film.Picture picture, Film.Sound sound) {
        return described(ProfileForm.usual(), name, bytes, container, minutes, picture, sound);
    }

    private static List<String> described(
            Profile profile,
            String name,
            long bytes,
            String container,
            double minutes,
            Film.Picture picture,
            Film.Sound sound) {
        Findings findings = new Findings();
        new FactsCheck(film(name, bytes, container, minutes, picture, sound), profile, findings).check();
        return findings.all().stream().map(SoundFinderTest::described).toList();
    }

    private static Film film(
            String name, long bytes, String container, double minutes, Film.Picture picture, Film.Sound sound) {
        return new Film(
                Path.of("/films", name),
                bytes,
                container,
                StreamTime.ofSeconds(60 * minutes),
                Optional.of(picture),
                Optional.of(sound));
    }
}
