package org.bookholder.app.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.course.CourseDesk;
import org.bookholder.app.course.CourseOverview;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.jobs.JobStatus;
import org.bookholder.app.jobs.Jobs;
import org.bookholder.app.session.SessionSettler;
import org.bookholder.app.work.WorkList;
import org.bookholder.course.Lesson;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.OverflowFolder;
import org.bookholder.journal.OverflowNotes;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.StoredExamples;
import org.bookholder.testing.Wav;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class BrokenOffTest {
    private static final String TEXT = "---\ntitle: One wheel\n---\nEvery wheel begins with its hub.\n";

    private final List<Throwable> faults = new ArrayList<>();

    @TempDir
    private Path folder;

    private Environment here;
    private Path course;
    private Path session;
    private Jobs jobs;
    private BrokenOff brokenOff;
    private boolean reading;

    @BeforeEach
    void breakOff() throws Exception {
        here = StoredExamples.here(folder.resolve("data"));
        course = Files.createDirectories(folder.resolve("wheels"));
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        Path lesson = Files.writeString(course.resolve("lesson-1.md"), TEXT);
        session = here.sessions().resolve("2026-09-09-0900-one-wheel");
        try (SessionFolder begun = SessionFolder.create(session, here.locks())) {
            Instant when = Instant.parse("2026-09-09T09:00:00Z");
            begun.journal()
                    .append(List.of(
                            new SessionEvent.Opened(StreamTime.ZERO, when, "One wheel", lesson.toString(), TEXT),
                            new SessionEvent.TakeStarted(
                                    StreamTime.ZERO, 1, when, "a microphone", ReadingPosition.START)));
        }
        Wav.write(session.resolve("take-001.wav"), 16_000, Wav.sine(300, 0.2, 16_000, 4));
        jobs = new Jobs(() -> reading, faults::add);
        brokenOff = new BrokenOff(here, jobs, new WorkList(here, any -> Optional.empty(), any -> {}));
    }

    @Test
    void aSessionThatWasBrokenOffIsListenedToOnceInTheBackground() throws Exception {
        CourseOverview overview = look();
        Lesson lesson = overview.status().board().lessons().get(0).lesson();
        assertThat(jobs.all())
                .singleElement()
                .satisfies(status -> assertThat(status.job().title()).isEqualTo("Listening again"))
                .satisfies(status -> assertThat(status.job().on()).isEqualTo("One wheel, 9 September 2026, 09:00"))
                .satisfies(status -> assertThat(status.job().listens()).isTrue());
        assertThat(brokenOff.listening(overview, lesson)).isTrue();
        look();
        assertThat(jobs.all()).hasSize(1);

        work();
        JobStatus done = jobs.all().get(0);
        assertThat(done.step()).as(done.problem()).isEqualTo(JobStatus.Step.DONE);
        assertThat(done.said()).contains("take 1 was broken off; listening again to what was recorded");
        assertThat(done.progress()).isPresent();
        assertThat(brokenOff.listening(overview, lesson)).isFalse();
        try (SessionFolder open = SessionFolder.openForReading(session)) {
            assertThat(open.events())
                    .filteredOn(SessionEvent.TakeSettled.class::isInstance)
                    .hasSize(1);
        }
        look();
        assertThat(jobs.all()).hasSize(1);
        assertThat(faults).isEmpty();
    }

    @Test
    void itWaitsWhileALessonIsRead() throws Exception {
        reading = true;
        look();
        work();
        assertThat(jobs.all().get(0).held()).isTrue();
        assertThat(jobs.all().get(0).step()).isEqualTo(JobStatus.Step.WAITING);
        reading = false;
        work();
        assertThat(jobs.all().get(0).step()).isEqualTo(JobStatus.Step.DONE);
    }

    @Test
    void aSessionOpenElsewhereIsLeftAloneUntilItIsClosed() throws ProblemException {
        try (SessionFolder open = SessionFolder.open(session, here.locks())) {
            assertThat(open.events()).hasSize(2);
            look();
            assertThat(jobs.all()).isEmpty();
        }
        look();
        assertThat(jobs.all()).hasSize(1);
    }

    @Test
    void aSessionThatIsOpenedMeanwhileIsNotCalledListenedTo() throws Exception {
        look();
        try (SessionFolder open = SessionFolder.open(session, here.locks())) {
            assertThat(open.events()).hasSize(2);
            work();
        }
        assertThat(jobs.all().get(0).step()).isEqualTo(JobStatus.Step.FAILED);
        assertThat(jobs.all().get(0).problem()).contains("not all that was recorded is in the notes yet");
    }

    @Test
    void theSessionIsLockedBeforeTheRecogniserIsLoaded() throws Exception {
        FakeEquipment noRecogniser = new FakeEquipment();
        noRecogniser.hearsForReal();
        Environment without = here.with(noRecogniser);
        String unlocked = catchThrowable(() -> SessionSettler.settle(without, session, (take, heard, length) -> {}))
                .getMessage();
        try (SessionFolder open = SessionFolder.open(session, here.locks())) {
            assertThat(open.events()).hasSize(2);
            assertThatThrownBy(() -> SessionSettler.settle(without, session, (take, heard, length) -> {}))
                    .isInstanceOf(ProblemException.class)
                    .hasMessageContaining("open")
                    .hasMessageNotContaining(unlocked);
        }
    }

    @Test
    void theSecondPlaceIsTakenInFirst() throws Exception {
        Path kept = Files.createDirectories(here.data().resolve("overflow/bookholder-overflow-1"));
        OverflowFolder overflow = OverflowFolder.begin(kept, session);
        SessionEvent last;
        try (SessionFolder open = SessionFolder.openForReading(session)) {
            last = open.events().get(1);
        }
        OverflowNotes.begin(
                overflow,
                Optional.of(last),
                List.of(new SessionEvent.PickupMarked(StreamTime.ofSeconds(3), 1, "a passing van")));
        look();
        work();
        assertThat(jobs.all().get(0).said()).anyMatch(line -> line.contains("are in the session now"));
        assertThat(kept).doesNotExist();
        try (SessionFolder open = SessionFolder.openForReading(session)) {
            assertThat(open.events().get(2)).isInstanceOf(SessionEvent.PickupMarked.class);
        }
    }

    @Test
    void aDamagedSessionIsNamedAndNotListenedToBeforeItIsRepaired() throws Exception {
        Path journal = session.resolve("journal.db");
        byte[] whole = Files.readAllBytes(journal);
        String bytes = new String(whole, StandardCharsets.ISO_8859_1);
        Files.writeString(
                journal, bytes.replace("{\"type\":\"take-st", "{\"type\":\"take_st"), StandardCharsets.ISO_8859_1);
        look();
        assertThat(brokenOff.damaged().findValuesAsText("folder")).containsExactly(session.toString());
        assertThat(jobs.all()).isEmpty();
        Files.write(journal, whole);
        Files.setLastModifiedTime(journal, FileTime.from(Instant.parse("2026-09-09T10:00:00Z")));
        look();
        assertThat(brokenOff.damaged()).isEmpty();
        assertThat(jobs.all()).hasSize(1);
    }

    private CourseOverview look() throws ProblemException {
        try (CourseDesk desk = new CourseDesk(here, course, true)) {
            CourseOverview overview = desk.overview().orElseThrow();
            brokenOff.look(overview, desk.kept());
            return overview;
        }
    }

    private void work() throws Exception {
        for (Stage stage : jobs.stages()) {
            while (stage.doWork() > 0) {
                // Run until there is nothing left to do.
            }
        }
    }
}
