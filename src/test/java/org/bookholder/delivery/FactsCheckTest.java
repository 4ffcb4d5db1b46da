package org.bookholder.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
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
        "my lesson.mp4, 500, mp4, 10, mend name: the name does not look like {lesson}.{ending}"
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
                        "mend video-kbps: the picture has 400 kb/s; allowed is 500 to 20000");
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
        Film.Picture picture =
                new Film.Picture("h264", "yuv420p", 1920, 1080, 16 / 9.0, false, FrameRate.FPS_25, false, 0);
        assertThat(found("a.mp4", 1, "mp4", 1, picture, new Film.Sound("aac", 48_000, 1, 0, List.of(1.0))))
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
        Findings findings = new Findings();
        Film film = new Film(
                Path.of("/films", name),
                bytes,
                container,
                StreamTime.ofSeconds(60 * minutes),
                Optional.of(picture),
                Optional.of(sound));
        new FactsCheck(film, ProfileForm.usual(), findings).check();
        return findings.all().stream().map(SoundFinderTest::described).toList();
    }
}
