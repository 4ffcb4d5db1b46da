package org.bookholder.app.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;
import org.bookholder.app.delivery.DeliveryProfiles;
import org.bookholder.app.delivery.ExportCheckService;
import org.bookholder.app.delivery.ExportJob;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.delivery.CheckReport;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.film.FilmReadBack;
import org.bookholder.film.FilmedReading;
import org.bookholder.film.NumberedCamera;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.Shot;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FilmServiceTest {
    /** The camera was switched on so many seconds before the take. */
    private static final double BEFORE = 1.51;

    private static short[] sound = new short[0];
    private static Path camera = Path.of("");

    @TempDir
    private Path folder;

    private Path session;
    private Path profile;
    private Environment here;

    /** Long groups of pictures, some of which depend on later ones, and AAC: as cameras write them. */
    @BeforeAll
    static void film(@TempDir Path shared) {
        sound = FilmedReading.sound(BEFORE, 21);
        camera = NumberedCamera.make(
                shared.resolve("CAM 01, it's.MP4"),
                525,
                "25",
                sound,
                "-c:v",
                "libx264",
                "-preset",
                "ultrafast",
                "-g",
                "100",
                "-bf",
                "2",
                "-c:a",
                "aac");
    }

    @BeforeEach
    void write() throws ProblemException, IOException {
        session = folder.resolve("session");
        profile = Files.writeString(
                folder.resolve("small.txt"),
                String.join("\n", ProfileForm.lines(ProfileForm.usual()))
                        .replace("at least 1080", "at least 180")
                        .replace("500 to 20000", "100 to 20000"));
        FilmedReading.write(session, folder.resolve("lesson.md").toString());
        here = StoredExamples.here(folder);
    }

    @Test
    void everyPictureAndSampleIsWhereThePlanSays() throws ProblemException {
        FilmedReading.match(session, camera, BEFORE, 0);
        FilmResult result = film(request(Optional.empty(), false));
        FilmReadBack film = FilmReadBack.of(result.made().file(), folder);

        assertThat(result.made().file()).isEqualTo(session.resolve("film/noise-to-be-cut.mp4"));
        assertThat(result.plan().clips()).hasSize(3);
        assertThat(film.pictures()).isEqualTo((int) result.plan().frames());
        assertPicturesAsPlanned(result.plan(), film);
        assertSoundAsPlanned(result.plan(), film, sound, 48);
        assertThat(film.loudness()).isCloseTo(-16, within(0.5));
        assertThat(film.truePeak()).isLessThanOrEqualTo(-1);
        assertThat(result.marked())
                .singleElement()
                .asString()
                .startsWith("Listen to line 4: ")
                .contains("strange");
        CheckReport report = check(result.made().file());
        assertThat(report.findings().stream().filter(f -> f.grade() == Grade.MEND))
                .isEmpty();
        assertThat(report.loudness().orElseThrow().integrated()).isCloseTo(-16, within(0.5));
        assertThat(result.made().file().resolveSibling("noise-to-be-cut.vtt"))
                .content()
                .contains("Four has a strange word.");
        assertThat(Ffmpeg.says(result.made().file(), "-c", "copy"))
                .contains("The second part")
                .contains("Subtitle: mov_text")
                .contains("(eng)");
    }

    @Test
    void aSecondFilmReplacesNothing() throws ProblemException {
        FilmedReading.match(session, camera, BEFORE, 0);
        Path first = film(request(Optional.of(folder.resolve("out/a.mp4")), true))
                .made()
                .file();
        FilmResult second = film(request(Optional.of(folder.resolve("out/a.mp4")), true));
        assertThat(first).isEqualTo(folder.resolve("out/a.mp4"));
        assertThat(second.made().file()).isEqualTo(folder.resolve("out/a-2.mp4"));
        assertThat(folder.resolve("out").toFile().list())
                .containsExactlyInAnyOrder(
                        "a.mp4", "a.vtt", "a.srt", "a.txt", "a-2.mp4", "a-2.vtt", "a-2.srt", "a-2.txt");
    }

    @Test
    void stoppedInTheMiddleItLeavesNothing() throws ProblemException {
        FilmedReading.match(session, camera, BEFORE, 0);
        AtomicInteger asked = new AtomicInteger();
        Interruption later = new Interruption(() -> asked.incrementAndGet() > 60);
        FilmService service =
                new FilmService(here, request(Optional.of(folder.resolve("out/a.mp4")), false), p -> {}, later);
        assertThatThrownBy(service::make).isInstanceOf(OperationInterrupted.class);
        assertThat(folder.resolve("out")).isEmptyDirectory();
    }

    @Test
    void withoutACameraADraftIsMadeOfTheTakesSoundAndAFilmIsRefused() throws ProblemException {
        FilmResult draft = film(request(Optional.empty(), true));
        assertThat(draft.plan().unseen()).containsExactly(1, 2, 3, 4, 5);
        FilmReadBack film = FilmReadBack.of(draft.made().file(), folder);
        assertThat(film.pictures()).isEqualTo((int) draft.plan().frames());
        assertThat(film.loudness()).isCloseTo(-16, within(0.5));
        assertRefused("no camera's file was matched");
    }

    @Test
    void aCameraFileThatIsNotThereIsNamedWithWhatToDo() throws ProblemException, IOException {
        Path moved = Files.copy(camera, folder.resolve("CAM2.MP4"));
        FilmedReading.match(session, moved, BEFORE, 0);
        Files.delete(moved);
        assertRefused("CAM2.MP4: is not there any more");
    }

    @Test
    void aCameraFileThatWasCutShortIsNamed() throws ProblemException, IOException {
        Path card = folder.resolve("CAM3.MTS");
        Ffmpeg.make(card, "-i", camera.toString(), "-c", "copy", "-f", "mpegts");
        FilmedReading.match(session, card, BEFORE, 0);
        byte[] whole = Files.readAllBytes(card);
        Files.write(card, Arrays.copyOf(whole, whole.length / 2));
        assertRefused("CAM3.MTS: was ");
    }

    @Test
    void aNameWithAnotherEndingThanTheFilmsKindIsRefused() throws ProblemException {
        FilmedReading.match(session, camera, BEFORE, 0);
        assertThatThrownBy(() -> film(request(Optional.of(folder.resolve("a.mov")), false)))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("name a file that ends in .mp4");
    }

    private void assertRefused(String why) {
        assertThatThrownBy(() -> film(request(Optional.empty(), false)))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining(why);
    }

    private void assertPicturesAsPlanned(FilmPlan plan, FilmReadBack film) {
        for (FilmClip clip : plan.clips()) {
            Shot shot = clip.shot().orElseThrow();
            List<Integer> planned = LongStream.range(shot.first(), shot.first() + clip.frames())
                    .mapToObj(number -> (int) number)
                    .toList();
            assertThat(film.numbers(clip.start(), clip.end(), shot.scale() / 100.0))
                    .as("pictures of lines %d to %d", clip.firstLine(), clip.lastLine())
                    .isEqualTo(planned);
        }
    }

    /** At the beginning, in the middle and at the end of each clip. */
    private void assertSoundAsPlanned(FilmPlan plan, FilmReadBack film, short[] recorded, int slack) {
        int count = 4800;
        for (FilmClip clip : plan.clips()) {
            long start = plan.tickOf(clip.start());
            long length = plan.tickOf(clip.end()) - start;
            double from = plan.rate().ticksAt(clip.shot().orElseThrow().first());
            for (double part : new double[] {0.15, 0.5, 0.8}) {
                long inside = Math.round(part * (length - count));
                assertThat(film.late(start + inside, recorded, from + inside, count))
                        .as("sound of lines %d to %d, %.2f inside", clip.firstLine(), clip.lastLine(), part)
                        .isBetween(-slack, slack);
            }
        }
    }

    private FilmRequest request(Optional<Path> out, boolean draft) {
        return new FilmRequest(session, out, draft, Set.of(), true, false, Optional.of(profile), false);
    }

    private FilmResult film(FilmRequest request) throws ProblemException {
        return new FilmService(here, request, progress -> {}, Interruption.NONE).make();
    }

    private CheckReport check(Path film) throws ProblemException {
        ExportJob job = new ExportJob(film, Optional.empty(), DeliveryProfiles.read(profile, here), Optional.empty());
        return new ExportCheckService(here, progress -> {}, Interruption.NONE).check(job, Optional.empty());
    }
}
