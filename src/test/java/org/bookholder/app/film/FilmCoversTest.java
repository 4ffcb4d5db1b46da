package org.bookholder.app.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.film.FilmReadBack;
import org.bookholder.film.FilmedReading;
import org.bookholder.film.plan.FilmPlanner;
import org.bookholder.film.plan.PlacedCover;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pictures of the author's over the voice, and the card with the title: read back from the film. */
final class FilmCoversTest {
    private static final double BEFORE = 1.51;
    private static final int WIDE = 32;
    private static final int HIGH = 18;

    private static Path camera = Path.of("");

    @TempDir
    private Path folder;

    private Path course;
    private Path lesson;
    private Environment here;

    @BeforeAll
    static void film(@TempDir Path shared) {
        camera = FilmedReading.camera(shared.resolve("CAM.MP4"), BEFORE);
    }

    @BeforeEach
    void write() throws ProblemException, IOException {
        course = Files.createDirectories(folder.resolve("course"));
        lesson = Files.writeString(
                course.resolve("lesson-1.md"),
                FilmedReading.TEXT
                        .replace("right behind", "right ![a red field](red.png) behind")
                        .replace("Five comes", "![](the%20screen.mp4) Five comes"));
        Files.writeString(course.resolve("course.yaml"), "title: A course\ndelivery: small.txt\n");
        FilmedReading.smallProfile(course.resolve("small.txt"), 180);
        Ffmpeg.make(course.resolve("red.png"), "-f", "lavfi", "-i", "color=red:s=400x300", "-frames:v", "1");
        Ffmpeg.make(
                course.resolve("the screen.mp4"),
                "-f",
                "lavfi",
                "-i",
                "color=blue:s=320x180:r=30",
                "-t",
                "1",
                "-pix_fmt",
                "yuv420p");
        Path session = course.resolve("sessions/first");
        FilmedReading.write(session, lesson.toString());
        FilmedReading.match(session, camera, BEFORE, 0);
        here = StoredExamples.here(folder);
    }

    @Test
    void aPictureIsShownFromItsWordOnWithTheVoiceBelow() throws ProblemException, IOException {
        FilmResult result = film(false, false);
        PlacedCover red = result.plan().covers().get(0);
        PlacedCover screen = result.plan().covers().get(1);
        double voice = result.plan().clips().get(0).in().seconds();
        assertThat(red.from() / 25.0).as("the fourth word of line 2").isCloseTo(4.48 - voice, within(0.021));
        assertThat(red.to())
                .as("the end of the paragraph")
                .isEqualTo(result.plan().clips().get(0).end());
        assertThat(screen.to()).isEqualTo(result.plan().frames());

        byte[] pictures = pictures(result.made().file());
        assertThat(pictures).hasSize((int) result.plan().frames() * WIDE * HIGH * 3);
        for (int frame = 0; frame < result.plan().frames(); frame++) {
            String shown = colour(pictures, frame, WIDE / 2, HIGH / 2);
            String wanted =
                    frame >= red.from() && frame < red.to() ? "red" : frame >= screen.from() ? "blue" : "camera";
            assertThat(shown).as("picture %d", frame).isEqualTo(wanted);
        }
        assertThat(colour(pictures, (int) red.from(), 1, HIGH / 2))
                .as("all of it is shown, with the colour of cards beside it")
                .isEqualTo("card");
        FilmReadBack film = FilmReadBack.of(result.made().file(), folder);
        assertThat(film.loudness()).isCloseTo(-16, within(0.5));
        assertThat(result.remarks()).noneMatch(remark -> remark.contains("screen"));
    }

    @Test
    void aFilmBeginsWithItsTitleIfWished() throws ProblemException, IOException {
        FilmResult plain = film(true, false);
        FilmResult titled = film(true, true);
        assertThat(titled.plan().frames()).isEqualTo(plain.plan().frames() + 75);
        assertThat(titled.plan().missing()).isEmpty();
        assertThat(titled.plan().joins()).isEqualTo(plain.plan().joins());
        byte[] pictures = pictures(titled.made().file());
        assertThat(colour(pictures, 10, 1, 1)).isEqualTo("card");
        int bright = 0;
        for (int i = 0; i < WIDE * HIGH; i++) {
            bright += (pictures[(10 * WIDE * HIGH + i) * 3] & 0xff) > 45 ? 1 : 0;
        }
        assertThat(bright).as("places where letters stand").isGreaterThan(8);
        assertThat(titled.plan().covers().get(0).from())
                .isEqualTo(plain.plan().covers().get(0).from() + 75);
    }

    @Test
    void aPictureThatIsMissingOrUnreadableIsNamedAndStopsAFinalFilmOnly() throws ProblemException, IOException {
        Files.delete(course.resolve("red.png"));
        FilmResult draft = film(true, false);
        assertThat(draft.plan().covers()).hasSize(1);
        assertThat(draft.obstacles()).singleElement().satisfies(obstacle -> {
            assertThat(obstacle.what()).isEqualTo("red.png cannot be shown: there is no such file");
            assertThat(obstacle.where()).endsWith("lesson-1.md:5");
        });
        assertThatThrownBy(() -> film(false, false)).hasMessageContaining("red.png cannot be shown");
        Files.writeString(course.resolve("red.png"), "no picture");
        assertThatThrownBy(() -> film(false, false))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("red.png cannot be shown: ");
    }

    @Test
    void aClipThatIsLongerThanItsPlaceIsNamed() throws ProblemException {
        Path screen = course.resolve("the screen.mp4");
        Ffmpeg.make(screen, "-f", "lavfi", "-i", "color=blue:s=320x180:r=30", "-t", "9", "-pix_fmt", "yuv420p");
        assertThat(film(true, false).remarks())
                .anyMatch(remark -> remark.matches(
                        "the%20screen\\.mp4 is 9\\.0 s long, but its place from line 5 on has only 2\\.\\d s: the rest"
                                + " is not shown"));
    }

    private FilmResult film(boolean draft, boolean title) throws ProblemException {
        FilmRequest request = new FilmRequest(
                lesson,
                Optional.empty(),
                draft,
                Set.of(),
                true,
                false,
                Optional.empty(),
                false,
                false,
                new FilmPlanner.Wishes(title, false));
        return new FilmService(here, request, progress -> {}, Interruption.NONE)
                .make(FilmObstacle.Told.TERMINAL, obstacle -> {});
    }

    private byte[] pictures(Path film) throws IOException {
        Path raw = folder.resolve("pictures.rgb");
        Ffmpeg.make(
                raw,
                "-i",
                film.toString(),
                "-map",
                "0:v",
                "-vf",
                "scale=" + WIDE + ":" + HIGH + ":flags=area",
                "-pix_fmt",
                "rgb24",
                "-vsync",
                "passthrough",
                "-f",
                "rawvideo");
        return Files.readAllBytes(raw);
    }

    private static String colour(byte[] pictures, int frame, int x, int y) {
        int at = ((frame * HIGH + y) * WIDE + x) * 3;
        int red = pictures[at] & 0xff;
        int green = pictures[at + 1] & 0xff;
        int blue = pictures[at + 2] & 0xff;
        if (red > 180 && green < 60 && blue < 60) {
            return "red";
        }
        if (blue > 180 && red < 60 && green < 60) {
            return "blue";
        }
        boolean card = Math.abs(red - 0x1c) < 8 && Math.abs(green - 0x1a) < 8 && Math.abs(blue - 0x17) < 8;
        return card ? "card" : "camera";
    }
}
