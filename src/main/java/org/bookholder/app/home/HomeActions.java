package org.bookholder.app.home;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.bookholder.app.course.CourseOverview;
import org.bookholder.app.course.ReadingOn;
import org.bookholder.app.course.RunningOrder;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.Jobs;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.app.work.WorkList;
import org.bookholder.app.work.WorkRequest;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.board.LessonState;
import org.bookholder.problem.ProblemException;

/** Does what the page asks for. Safe for use by several threads. */
final class HomeActions {
    private static final JsonMapper MAPPER = new JsonMapper();

    private final Environment here;
    private final HomeCourses courses;
    private final HomeReading reading;
    private final HomeSettings settings;
    private final BeforeReading before;
    private final AllowedPaths paths;
    private final Jobs jobs;
    private final WorkList work;
    private final BrokenOff brokenOff;
    private final KeptOrders orders;
    private final Supplier<LocalDate> today;
    private final Runnable quit;

    /** Acts on these; {@code quit} ends the program when it is called. */
    HomeActions(
            Environment here,
            HomeCourses courses,
            HomeReading reading,
            HomeSettings settings,
            BeforeReading before,
            AllowedPaths paths,
            Jobs jobs,
            WorkList work,
            BrokenOff brokenOff,
            KeptOrders orders,
            Supplier<LocalDate> today,
            Runnable quit) {
        this.here = here;
        this.courses = courses;
        this.reading = reading;
        this.settings = settings;
        this.before = before;
        this.paths = paths;
        this.jobs = jobs;
        this.work = work;
        this.brokenOff = brokenOff;
        this.orders = orders;
        this.today = today;
        this.quit = quit;
    }

    /** Does it; returns why it can't be done, for people, or nothing. */
    Optional<String> act(String json) {
        try {
            return act(MAPPER.readTree(json));
        } catch (JsonProcessingException e) {
            return Optional.of("this is not JSON");
        } catch (ProblemException e) {
            return Optional.of(e.told());
        }
    }

    private Optional<String> act(JsonNode asked) throws ProblemException {
        courses.mustBeOpen(asked);
        switch (asked.path("do").asText()) {
            case "open" -> {
                return open(paths.folder(asked.path("folder").asText()));
            }
            case "choose" -> {
                if (!courses.choose(asked.path("course").asText())) {
                    return Optional.of("this course is not known any more");
                }
            }
            case "forget" -> courses.forget(asked.path("course").asText());
            case "read" -> {
                return read(asked.path("lesson").asText(), asked.path("pickups").asBoolean());
            }
            case "demo" -> {
                return demo();
            }
            case "next_lesson" -> {
                return reading.nextLesson();
            }
            case "order" -> order(asked);
            case "looked_at", "not_looked_at" -> {
                return lookedAt(asked);
            }
            case "end_reading" -> reading.end();
            case "dismiss" -> reading.dismiss();
            case "microphones" -> before.look();
            case "set" -> {
                settings.set(
                        asked.path("group").asText(),
                        asked.path("name").asText(),
                        asked.path("value").asText());
                before.look();
            }
            case "begin" -> begin(asked.path("kind").asText(), asked.path("form"));
            case "show" -> show(paths.path(asked.path("folder").asText()));
            case "stop" -> jobs.stop(asked.path("id").asInt());
            case "forget_job" -> jobs.dismiss(asked.path("id").asInt());
            case "quit" -> {
                return quit(asked.path("sure").asBoolean());
            }
            default -> {
                return Optional.of("there is no such action");
            }
        }
        return Optional.empty();
    }

    /** A decision about a fact is one of the course's marks. */
    private Optional<String> lookedAt(JsonNode asked) {
        String course = courses.seen().name();
        Optional<String> trouble = courses.desk(course).flatMap(desk -> desk.act(asked.toString()));
        courses.look();
        return trouble;
    }

    /** A mistake in one of the course's files is told with its place, as everywhere else. */
    private Optional<String> open(Path folder) throws ProblemException {
        try {
            courses.open(folder);
            return Optional.empty();
        } catch (ProblemException e) {
            if (e.where().equals(folder.toString())) {
                throw e;
            }
            return Optional.of(e.getMessage());
        }
    }

    /** A file would be opened with whatever program is meant for it. */
    private void show(Path folder) throws ProblemException {
        if (!Files.isDirectory(folder)) {
            throw new ProblemException("this is no folder", folder.toString(), "choose the folder that it lies in");
        }
        here.equipment().showFolder(folder);
    }

    private Optional<String> quit(boolean sure) {
        if (!sure && reading.standing().goesOn()) {
            return Optional.of("a lesson is being read");
        }
        if (!sure && jobs.goOn()) {
            return Optional.of("something is going on in the background");
        }
        reading.end();
        jobs.stopAll();
        quit.run();
        return Optional.empty();
    }

    /**
     * Begins work in the background.
     *
     * @throws ProblemException if the form misses something or names what it may not; nothing is begun then
     */
    void begin(String kind, JsonNode form) throws ProblemException {
        Job job = work.job(kind, new WorkRequest(form, paths::path))
                .orElseThrow(() -> new ProblemException("there is no such work", kind, "load the page again"));
        jobs.add(job);
    }

    /** Puts today's lessons in another order; without any, goes back to the plan's. */
    private void order(JsonNode asked) throws ProblemException {
        String course = courses.seen().folder();
        if (asked.has("lessons")) {
            List<String> names = new ArrayList<>();
            asked.path("lessons").forEach(name -> names.add(name.asText()));
            orders.keep(course, today.get(), names);
        } else {
            orders.drop(course);
        }
    }

    /** The lessons that come after one in today's order and have lines that nobody has read. */
    private List<LessonState> following(HomeCourses.Seen seen, String name) {
        List<LessonState> all = seen.overview()
                .map(course -> RunningOrder.of(course.status(), here.zone(), orders.of(seen.folder(), today.get())))
                .orElse(List.of());
        int place = 0;
        while (place < all.size() && !all.get(place).lesson().name().equals(name)) {
            place++;
        }
        return all.stream()
                .skip(place + 1L)
                .filter(state -> !state.recording().unread().isEmpty())
                .toList();
    }

    /** The order for a lesson that comes later in the day; where it was begun, it goes on. */
    private HomeReading.Order later(HomeCourses.Seen seen, LessonState next) throws ProblemException {
        CourseOverview course = seen.overview().orElseThrow();
        // A job that listens waits while a lesson is read, and keeps its session locked.
        ReadingOn on =
                brokenOff.listening(course, next.lesson()) ? ReadingOn.anew(next) : ReadingOn.of(course, next, here);
        return order(seen, next.lesson(), on, false);
    }

    /** The order to read a lesson, or to pick up lines of it, to the microphone that was chosen. */
    private HomeReading.Order order(HomeCourses.Seen seen, Lesson lesson, ReadingOn on, boolean pickups)
            throws ProblemException {
        return new HomeReading.Order(
                seen.name(),
                lesson.name(),
                lesson.title(),
                lesson.file(),
                on.session(),
                pickups,
                on.from(),
                Optional.empty(),
                settings.microphone());
    }

    private Optional<String> read(String name, boolean pickups) throws ProblemException {
        // A session that has just ended is known only now.
        courses.look();
        HomeCourses.Seen seen = courses.seen();
        Optional<LessonState> found = seen.overview().stream()
                .map(CourseOverview::status)
                .flatMap(status -> status.board().lessons().stream())
                .filter(state -> state.lesson().name().equals(name))
                .findFirst();
        if (found.isEmpty()) {
            return Optional.of("the course has no lesson '" + name + "' that can be read");
        }
        Lesson lesson = found.get().lesson();
        CourseOverview course = seen.overview().orElseThrow();
        if (brokenOff.listening(course, lesson)) {
            return Optional.of(
                    "what you read of it before is being listened to again; wait until that is done, or stop it");
        }
        ReadingOn on = pickups
                ? new ReadingOn(course.toPickUp(lesson).map(RecordedSession::folder), Optional.empty())
                : ReadingOn.of(course, found.get(), here);
        List<HomeReading.Order> lessons = new ArrayList<>();
        lessons.add(order(seen, lesson, on, pickups));
        for (LessonState next : following(seen, name)) {
            lessons.add(later(seen, next));
        }
        return reading.ask(lessons, () -> on.session().ifPresent(courses::letGo));
    }

    /** Opens the demo's course, and reads its first lesson with the recording of a reader. */
    private Optional<String> demo() throws ProblemException {
        Path demo = here.demoScripts();
        courses.open(demo);
        HomeCourses.Seen seen = courses.seen();
        Path script = demo.resolve("lesson-1.md");
        return reading.ask(
                List.of(new HomeReading.Order(
                        seen.name(),
                        "lesson-1",
                        ScriptFile.read(script).script().title(),
                        script,
                        Optional.empty(),
                        false,
                        Optional.empty(),
                        Optional.of(demo.resolve("lesson-1.wav")),
                        Optional.empty())),
                () -> {});
    }
}
