package org.bookholder.app.home;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.day.DayService;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.jobs.Jobs;
import org.bookholder.app.work.WorkList;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionSummary.Standing;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Readings;
import org.bookholder.testing.StoredExamples;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program is killed while a lesson is read; then home is opened, listens again, and "Read on" is pressed. */
final class ReadOnAfterAKillTest {
    private static final String TEXT = "The river was cold today.\nBuy a dozen frames.\nThen wait for spring.\n";

    @TempDir
    private Path folder;

    @Test
    void theSameSessionGoesOn() throws Exception {
        Environment here = StoredExamples.here(Files.createDirectories(folder.resolve("data")));
        Path course = Files.createDirectories(folder.resolve("course"));
        Path lesson = Files.writeString(course.resolve("lesson.md"), TEXT);
        Path session = here.sessions().resolve("broken-off");
        Instant when = Instant.now();
        try (SessionFolder killed = SessionFolder.create(session, here.locks())) {
            killed.journal()
                    .append(List.of(
                            new SessionEvent.Opened(StreamTime.ZERO, when, "Lesson", lesson.toString(), TEXT),
                            new SessionEvent.TakeStarted(StreamTime.ZERO, 1, when, "", ReadingPosition.START),
                            Readings.settled(Readings.complete(1, 1, 1, 5, 1, 3))));
        }
        new DayService(here, DayService.SOLE_PRESENTER).opened(session);
        Jobs jobs = new Jobs(() -> false, fault -> {});
        WorkList work = new WorkList(here, any -> Optional.empty(), any -> {});
        BrokenOff brokenOff = new BrokenOff(here, jobs, work);
        HomeReading reading = new HomeReading(here, fault -> {});
        try (HomeCourses courses = new HomeCourses(here, reading)) {
            courses.open(course);
            HomeSettings settings = new HomeSettings(here);
            HomeActions actions = new HomeActions(
                    here,
                    courses,
                    reading,
                    settings,
                    new BeforeReading(here, settings),
                    new AllowedPaths(new FolderList(folder), here, courses.known()),
                    jobs,
                    work,
                    brokenOff,
                    new KeptOrders(folder.resolve("orders.json")),
                    here::today,
                    () -> {});
            brokenOff.look(courses.overview("today"), courses.kept(courses.seen()));
            for (Stage stage : jobs.stages()) {
                while (stage.doWork() > 0) {
                    // Run until there is nothing left to do.
                }
            }
            assertThat(SessionFolder.summary(session, here.locks()).standing())
                    .as("it was listened to")
                    .isEqualTo(Standing.FINISHED);

            assertThat(actions.act("{\"do\":\"read\",\"lesson\":\"lesson\"}")).isEmpty();
            HomeReading.Order order = reading.standing().order().orElseThrow();
            assertThat(order.session()).contains(session.toAbsolutePath().normalize());
            assertThat(order.from()).contains(2);
        }
    }
}
