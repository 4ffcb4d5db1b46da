package org.bookholder.app.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BrokenBarrierException;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.jobs.Jobs;
import org.bookholder.app.work.WorkList;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the page's rooms refuse because of where a file lies or what else is running. */
final class RoomRefusalsTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    private final FakeEquipment equipment = new FakeEquipment();

    @TempDir
    private Path folder;

    private Path course;
    private Environment here;
    private HomeReading reading;
    private HomeCourses courses;
    private HomeRooms rooms;

    @BeforeEach
    void openACourse() throws Exception {
        course = Files.createDirectories(folder.resolve("user/wheels"));
        Files.writeString(folder.resolve("above.md"), "A line above.\n");
        Files.writeString(folder.resolve("far.md"), "A line far away.\n");
        Files.writeString(folder.resolve("target.md"), "A line behind a link.\n");
        Files.writeString(course.resolve("lesson.md"), "One line.\n");
        Files.createSymbolicLink(course.resolve("link.md"), folder.resolve("target.md"));
        Files.writeString(
                course.resolve("course.yaml"),
                "lessons:\n  - lesson.md\n  - ../../above.md\n  - " + folder.resolve("far.md") + "\n  - link.md\n");
        here = StoredExamples.here(folder.resolve("data"), equipment);
        reading = new HomeReading(here, fault -> {});
        courses = new HomeCourses(here, reading);
        courses.open(course);
        rooms = HomeRooms.of(
                here,
                courses,
                reading,
                new HomeSettings(here),
                new AllowedPaths(new FolderList(folder.resolve("user")), here, courses.known()),
                new KeptOrders(folder.resolve("orders.json")),
                (kind, form) -> {});
    }

    @ParameterizedTest
    @ValueSource(strings = {"above.md", "far.md", "link.md"})
    void aScriptOutsideOfTheCourseIsNeitherShownNorChanged(String file) throws Exception {
        for (String action : new String[] {"open", "look", "save", "save_over", "keep", "as_text", "revision"}) {
            assertThatThrownBy(() -> asked(action, file))
                    .as(action)
                    .isInstanceOf(ProblemException.class)
                    .hasMessageContaining("this script lies outside of the course");
        }
        assertThat(asked("open", "lesson.md").path("text").asText()).isEqualTo("One line.\n");
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(path -> String.valueOf(path.getFileName())))
                    .containsExactlyInAnyOrder("above.md", "data", "far.md", "target.md", "user");
        }
        assertThat(folder.resolve("above.md")).hasContent("A line above.");
    }

    @Test
    void aTextIsStillKeptWhenItsFileHasGone() throws Exception {
        Files.delete(course.resolve("lesson.md"));
        String kept = asked("keep", "lesson.md").path("kept").asText();
        assertThat(course.resolve(kept)).hasContent("Mine.");
    }

    @Test
    void oneOfTwoCoursesOfOneNameIsMade() throws IOException, InterruptedException, ExecutionException {
        int made = 0;
        CyclicBarrier both = new CyclicBarrier(2);
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            Future<Boolean> first = threads.submit(() -> create(both));
            Future<Boolean> second = threads.submit(() -> create(both));
            made += first.get() ? 1 : 0;
            made += second.get() ? 1 : 0;
        } finally {
            threads.shutdown();
        }
        assertThat(made).isEqualTo(1);
        try (Stream<Path> files = Files.list(folder.resolve("user"))) {
            assertThat(files.map(path -> String.valueOf(path.getFileName())))
                    .containsExactlyInAnyOrder("new", "wheels");
        }
    }

    @Test
    void whatIsMeantForAnotherCourseIsRefused() throws Exception {
        String own = courses.seen().name();
        assertThat(rooms.questions().answer("{\"room\":\"plan\",\"do\":\"show\",\"of\":\"" + own + "\"}"))
                .contains("days");
        assertThatThrownBy(() -> rooms.questions()
                        .answer("{\"room\":\"plan\",\"do\":\"set\",\"path\":\"title\",\"value\":\"Mine\","
                                + "\"of\":\"another\"}"))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("another course is open now; look again");
        assertThat(actions().act("{\"do\":\"order\",\"lessons\":[\"lesson\"],\"of\":\"another\"}"))
                .contains("another course is open now; look again");
        assertThat(actions().act("{\"do\":\"order\",\"lessons\":[\"lesson\"],\"of\":\"" + own + "\"}"))
                .isEmpty();
    }

    @Test
    void onlyAFolderIsShown() {
        Path file = course.resolve("lesson.md");
        assertThat(actions().act("{\"do\":\"show\",\"folder\":\"" + file + "\"}"))
                .contains("lesson.md: this is no folder; choose the folder that it lies in");
        assertThat(actions().act("{\"do\":\"show\",\"folder\":\"" + course + "\"}"))
                .isEmpty();
        assertThat(equipment.shown()).containsExactly(course);
    }

    @Test
    void noSoundIsCheckedWhileALessonIsRead() {
        assertThat(reading.ask(List.of(order()), () -> {})).isEmpty();
        assertThatThrownBy(() -> rooms.questions().answer("{\"room\":\"before\",\"do\":\"check\"}"))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("a lesson is being read; check the sound when it is over");
    }

    @Test
    void aReadingThatCanNotBeginIsNotLeftInPreparation() {
        IllegalStateException fault = new IllegalStateException("a fault");
        assertThatThrownBy(() -> reading.ask(List.of(order()), () -> {
                    throw fault;
                }))
                .isSameAs(fault);
        assertThat(reading.standing().goesOn()).isFalse();
        assertThat(reading.ask(List.of(order()), () -> {})).isEmpty();
    }

    private HomeReading.Order order() {
        return new HomeReading.Order(
                courses.seen().name(),
                "lesson",
                "lesson",
                course.resolve("lesson.md"),
                Optional.empty(),
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private HomeActions actions() {
        Jobs jobs = new Jobs(() -> false, fault -> {});
        WorkList work = new WorkList(here, session -> Optional.empty(), session -> {});
        HomeSettings settings = new HomeSettings(here);
        return new HomeActions(
                here,
                courses,
                reading,
                settings,
                new BeforeReading(here, settings),
                new AllowedPaths(new FolderList(folder.resolve("user")), here, courses.known()),
                jobs,
                work,
                new BrokenOff(here, jobs, work),
                new KeptOrders(folder.resolve("orders.json")),
                here::today,
                () -> {});
    }

    private boolean create(CyclicBarrier both) throws InterruptedException, BrokenBarrierException {
        both.await();
        try {
            rooms.questions()
                    .answer("{\"room\":\"new\",\"do\":\"create\",\"name\":\"new\",\"place\":\"\","
                            + "\"lessons\":[{\"name\":\"a.md\",\"text\":\"One.\"}]}");
            return true;
        } catch (ProblemException e) {
            assertThat(e).hasMessageContaining("a folder of this name is there already");
            return false;
        }
    }

    private JsonNode asked(String action, String file) throws Exception {
        return MAPPER.readTree(rooms.questions()
                .answer("{\"room\":\"scripts\",\"do\":\"" + action + "\",\"file\":\"" + file
                        + "\",\"text\":\"Mine.\",\"revision\":\"\"}"));
    }
}
