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
import java.util.stream.LongStream;
import org.bookholder.app.delivery.DeliveryProfiles;
import org.bookholder.app.delivery.ExportCheckService;
import org.bookholder.app.delivery.ExportJob;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.session.StoredSession;
import org.bookholder.delivery.CheckReport;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.film.FilmReadBack;
import org.bookholder.film.FilmedReading;
import org.bookholder.film.NumberedCamera;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.Shot;
import org.bookholder.footage.Cameras;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.StoredExamples;
import org.bookholder.testing.Wav;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

@Execution(ExecutionMode.CONCURRENT)
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
        profile = FilmedReading.smallProfile(folder.resolve("small.txt"), 180);
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
        MediainfoReads.asPlanned(result);
    }

    @Test
    void at2997FromUncompressedSoundNoPictureIsWrongAndNoSampleMoves() throws ProblemException {
        short[] recorded = FilmedReading.sound(0.37, 19);
        Path other = NumberedCamera.make(
                folder.resolve("B.mov"),
                560,
                "30000/1001",
                recorded,
                "-c:v",
                "libx264",
                "-preset",
                "ultrafast",
                "-g",
                "60",
                "-bf",
                "2",
                "-c:a",
                "pcm_s16le");
        FilmedReading.match(session, other, 0.37, 0);
        FilmResult result = film(request(Optional.empty(), false));
        FilmReadBack film = FilmReadBack.of(result.made().file(), folder);
        assertThat(result.plan().rate()).isEqualTo(FrameRate.FPS_29_97);
        assertPicturesAsPlanned(result.plan(), film);
        // The rumble filter delays a little what is low.
        assertSoundAsPlanned(result.plan(), film, recorded, 24);
    }

    @Test
    void aRecorderWhoseClockRunsAtAnotherSpeedStaysWithThePicture() throws ProblemException {
        // Without following its clock its sound would be 7 ms off at the first line and 15 ms at the last.
        double drift = 900e-6;
        double before = 0.7;
        short[] take = FilmedReading.sound(0, FilmedReading.SECONDS);
        float[] heard = new float[take.length];
        for (int i = 0; i < heard.length; i++) {
            heard[i] = take[i] / 32_768f;
        }
        float[] counted = Cameras.counted(heard, -before * 48_000, drift, 19 * 48_000);
        short[] recorded = new short[counted.length];
        for (int i = 0; i < recorded.length; i++) {
            recorded[i] = (short) Math.round(counted[i] * 32_768);
        }
        Path recorder = Wav.write(folder.resolve("REC.WAV"), 48_000, recorded);
        FilmedReading.match(session, camera, BEFORE, 0);
        FilmedReading.match(session, recorder, before * (1 + drift), 900_000);
        FilmResult result = film(request(Optional.empty(), true));
        assertThat(FilmText.soundSources(result.plan())).isEqualTo("recorder");
        FilmReadBack film = FilmReadBack.of(result.made().file(), folder);
        assertSoundAsPlanned(result.plan(), film, sound, 48);
    }

    @Test
    void aLessonsFilmTakesEachLineFromTheSessionInWhichItIsClean() throws ProblemException, IOException {
        Path course = Files.createDirectories(folder.resolve("course"));
        Path lesson = Files.writeString(course.resolve("lesson-1.md"), FilmedReading.TEXT);
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        FilmedReading.write(course.resolve("sessions/first"), lesson.toString());
        FilmedReading.writePickup(course.resolve("sessions/second"), lesson.toString());
        FilmRequest request = request(lesson, Optional.empty(), true);
        FilmResult result = film(request);
        assertThat(result.plan().clips().stream()
                        .map(clip -> clip.firstLine() + "-" + clip.lastLine() + " of " + clip.session()))
                .containsExactly("1-2 of 0", "3-3 of 0", "4-4 of 1", "5-5 of 0");
        assertThat(result.marked()).isEmpty();
        assertThat(result.made().file())
                .isEqualTo(course.resolve("sessions/second/film/draft-of-lesson/lesson-1-draft.mp4"));
    }

    @Test
    void ofReadingsThatAreEquallyGoodTheFilmedOneIsUsed() throws ProblemException, IOException {
        Path course = Files.createDirectories(folder.resolve("course"));
        Path lesson = Files.writeString(course.resolve("lesson-1.md"), FilmedReading.TEXT);
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        Path first = course.resolve("sessions/first");
        FilmedReading.write(first, lesson.toString());
        FilmedReading.match(first, camera, BEFORE, 0);
        FilmedReading.writeAgain(course.resolve("sessions/second"), lesson.toString());
        FilmRequest request = request(lesson, Optional.empty(), true);
        FilmResult result = film(request);
        assertThat(result.plan().clips()).isNotEmpty().allMatch(clip -> clip.session() == 0);
        assertThat(result.remarks())
                .contains(
                        "Lines 1, 2, 3, 4 and 5 were read well again in a later session, but no camera file is matched"
                                + " with that session, so the earlier reading is used. Match the camera file if you want"
                                + " the later one.");
    }

    @Test
    void aLineThatIsNewSinceTheLessonWasReadIsMissing() throws ProblemException, IOException {
        Path course = Files.createDirectories(folder.resolve("course"));
        Path lesson = Files.writeString(course.resolve("lesson-1.md"), FilmedReading.TEXT + "Six is new.\n");
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        Path first = course.resolve("sessions/first");
        FilmedReading.write(first, lesson.toString());
        FilmedReading.match(first, camera, BEFORE, 0);
        FilmRequest request = request(lesson, Optional.empty(), false);
        assertThatThrownBy(() -> film(request))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("there is nothing to use for line 6");
    }

    @Test
    void linesThatAreLeftOutLeaveNoTrace() throws ProblemException {
        FilmResult result = film(leavingOut(2, 3));
        assertThat(result.plan().clips().stream().map(clip -> clip.firstLine() + "-" + clip.lastLine()))
                .containsExactly("1-1", "4-4", "5-5");
        assertThat(result.plan().missing()).isEmpty();
        assertThat(result.made().file().resolveSibling("noise-to-be-cut-draft.vtt"))
                .content()
                .contains("One is")
                .doesNotContain("Two comes");
        FilmResult later = film(leavingOut());
        assertThat(later.plan().clips().stream().map(FilmClip::firstLine))
                .as("a later film, which finds the decision in the session")
                .containsExactly(1, 4, 5);
        takeBackTheLastDecision();
        assertThat(film(leavingOut()).plan().clips().stream().map(FilmClip::firstLine))
                .as("lines 3 and 4 were read in one go")
                .containsExactly(1, 3, 5);
        assertThatThrownBy(() -> film(leavingOut(6)))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("there is no line 6 to leave out; name lines from 1 to 5");
    }

    private void takeBackTheLastDecision() throws ProblemException {
        int last;
        try (StoredSession kept = StoredSession.open(here, session)) {
            last = kept.state()
                    .remarks()
                    .acts()
                    .last(FilmDecisions.AUTHOR)
                    .orElseThrow()
                    .number();
        }
        try (SessionFolder open = SessionFolder.open(session, here.locks())) {
            Remark undo = new Remark.Signed(FilmDecisions.AUTHOR, new Remark.Retracted(last));
            open.journal().append(new SessionEvent.Remarked(StreamTime.ofSeconds(18), undo));
        }
    }

    @Test
    void aSessionThatIsOpenElsewhereIsNotDecidedAbout() throws ProblemException {
        try (SessionFolder open = SessionFolder.open(session, here.locks())) {
            assertThatThrownBy(() -> film(leavingOut(2)))
                    .as("%s", open.path())
                    .isInstanceOf(ProblemException.class)
                    .hasMessageContaining("is open");
        }
    }

    private FilmRequest leavingOut(Integer... lines) {
        return request(session, Optional.empty(), true, lines);
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
    void aCameraFileThatWasCutShortIsNamed() throws ProblemException, IOException {
        Path card = folder.resolve("CAM3.MTS");
        Ffmpeg.make(card, "-i", camera.toString(), "-c", "copy", "-f", "mpegts");
        FilmedReading.match(session, card, BEFORE, 0);
        byte[] whole = Files.readAllBytes(card);
        Files.write(card, Arrays.copyOf(whole, whole.length / 2));
        assertRefused("CAM3.MTS was ");
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
        return request(session, out, draft);
    }

    private FilmRequest request(Path place, Optional<Path> out, boolean draft, Integer... leaveOut) {
        return SmallFilm.of(place, out, draft, Set.of(leaveOut), Optional.of(profile));
    }

    private FilmResult film(FilmRequest request) throws ProblemException {
        return new FilmService(here, request, progress -> {}, Interruption.NONE)
                .make(FilmObstacle.Told.TERMINAL, obstacle -> {});
    }

    private CheckReport check(Path film) throws ProblemException {
        ExportJob job = new ExportJob(
                film,
                Optional.empty(),
                DeliveryProfiles.read(profile, here),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Set.of(),
                List.of());
        return new ExportCheckService(here, progress -> {}, Interruption.NONE).check(job, Optional.empty());
    }
}
