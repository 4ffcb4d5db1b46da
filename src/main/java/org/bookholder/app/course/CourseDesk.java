package org.bookholder.app.course;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.day.DayService;
import org.bookholder.app.desk.DeskElsewhere;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.review.ReviewSessions;
import org.bookholder.app.session.SessionCache;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Lesson;
import org.bookholder.course.LessonScripts;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.shoot.ChosenDays;
import org.bookholder.course.shoot.PlanCache;
import org.bookholder.desk.DeskCourse;
import org.bookholder.desk.ServedSession;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;

/**
 * The desk of a course: its sessions, which can be opened one by one, its board and its plan. Everything is recomputed
 * whenever something on disk has changed; but a script is parsed, and a plan made, only when it would come out differently. Safe for use
 * by several threads.
 */
public final class CourseDesk implements SessionDirectory, DeskCourse, AutoCloseable {
    private static final JsonMapper MAPPER = new JsonMapper();

    private final Environment here;
    private final Path folder;
    private final boolean course;
    private final SessionCache states;
    private final LessonScripts scripts;
    private final PlanCache plans = new PlanCache(ChosenDays::plan);
    private final EditMarks marks;
    private final ReviewSessions reviews;
    private Standing standing = new Standing("", "");
    private List<SessionCache.Kept> kept = List.of();
    private Optional<CourseOverview> overview = Optional.empty();

    /**
     * Creates the desk of a folder.
     *
     * @param course whether the folder holds a course; otherwise it holds only sessions
     */
    public CourseDesk(Environment here, Path folder, boolean course) {
        this.here = here;
        this.folder = folder;
        this.course = course;
        this.scripts = new LessonScripts(here.sideBySide());
        this.states =
                new SessionCache(here, course ? List.of(folder.resolve("sessions"), here.sessions()) : List.of(folder));
        this.marks = new EditMarks(here, folder);
        this.reviews = new ReviewSessions(here);
    }

    /** The folders of the sessions that it shows, sorted by time. */
    public synchronized List<Path> shown() throws ProblemException {
        List<Lesson> lessons = course ? CourseReader.readable(folder, scripts).lessons() : List.of();
        return recorded(states.all()).stream()
                .filter(session -> !course || lesson(lessons, session).isPresent())
                .map(RecordedSession::folder)
                .toList();
    }

    @Override
    public Optional<DeskCourse> course() {
        return Optional.of(this);
    }

    @Override
    public Optional<ServedSession> session(String name) throws ProblemException {
        // An open session needs no search; its page asks often.
        Optional<Path> open = named(name, reviews.folders());
        Optional<Path> found = open.isPresent() ? open : named(name, states.folders());
        return found.isEmpty() ? Optional.empty() : Optional.of(reviews.of(found.get()));
    }

    private static Optional<Path> named(String name, List<Path> sessions) {
        return sessions.stream()
                .filter(session -> CourseJson.name(session).equals(name))
                .findFirst();
    }

    @Override
    public synchronized Standing now() throws ProblemException {
        return now(SessionCache.Progress.NONE);
    }

    private Standing now(SessionCache.Progress progress) throws ProblemException {
        reviews.letGo();
        kept = List.copyOf(states.all(progress));
        String revision = revision(kept);
        if (!standing.revision().equals(revision)) {
            standing = new Standing(revision, json(kept));
        }
        return standing;
    }

    /**
     * The course as it stands now; empty if the folder is no course.
     *
     * @throws ProblemException if the course cannot be read as it is
     */
    public synchronized Optional<CourseOverview> overview() throws ProblemException {
        return overview(SessionCache.Progress.NONE);
    }

    /** The same; {@code progress} is told before a session is read. */
    public synchronized Optional<CourseOverview> overview(SessionCache.Progress progress) throws ProblemException {
        now(progress);
        return overview;
    }

    /** All sessions in the folders in which those of the course may lie, as they were last looked at. */
    public synchronized List<SessionCache.Kept> kept() {
        return kept;
    }

    @Override
    public synchronized Optional<String> act(String json) {
        try {
            JsonNode asked = MAPPER.readTree(json);
            String lesson = asked.path("lesson").asText();
            double hours = asked.path("hours").asDouble(0);
            if (!(hours >= 0 && hours <= EditMarks.MOST_HOURS)) {
                return Optional.of("an edit takes from 0 to 1000 hours");
            }
            switch (asked.path("do").asText()) {
                case "edited" -> marks.edited(lesson, true, hours);
                case "not_edited" -> marks.edited(lesson, false, 0);
                case "looked_at" -> marks.lookedAt(lesson, asked.path("line").asInt(), true);
                case "not_looked_at" ->
                    marks.lookedAt(lesson, asked.path("line").asInt(), false);
                case "undo" -> {
                    if (asked.path("undoable").asInt(marks.undoable()) != marks.undoable()) {
                        return Optional.of("someone else has just marked or undone something; look before you undo");
                    }
                    marks.undo();
                }
                default -> {
                    return Optional.of("there is no such action");
                }
            }
            return Optional.empty();
        } catch (JsonProcessingException e) {
            return Optional.of("this is not JSON");
        } catch (ProblemException e) {
            return Optional.of(e.named());
        }
    }

    /** Lets go of a session, so that it can be read on. */
    public void letGo(Path session) {
        reviews.letGo(session);
    }

    @Override
    public void close() {
        reviews.close();
    }

    /** Everything the page shows depends on these files, the date, and the marks that can be undone. */
    private String revision(List<SessionCache.Kept> kept) {
        StringBuilder seen = new StringBuilder();
        kept.forEach(session -> seen.append(session.folder()).append(session.stamp()));
        if (course) {
            for (File file : files(folder)) {
                seen.append(file.getName()).append(SessionCache.stamp(file));
                // Modules may be folders, and exports are one; what is in a session is stamped with it.
                if (file.isDirectory() && !file.getName().equals("sessions")) {
                    for (File inner : files(file.toPath())) {
                        seen.append(inner.getName()).append(SessionCache.stamp(inner));
                    }
                }
            }
        }
        kept.stream()
                .map(SessionCache.Kept::folder)
                .filter(this::isReadElsewhere)
                .forEach(seen::append);
        seen.append(here.today()).append(marks.undoable());
        return Integer.toHexString(seen.toString().hashCode()) + "x" + seen.length();
    }

    private static File[] files(Path folder) {
        File[] files = folder.toFile().listFiles();
        return files == null ? new File[0] : files;
    }

    private String json(List<SessionCache.Kept> kept) throws ProblemException {
        List<String> troubles = new ArrayList<>();
        kept.stream()
                .map(SessionCache.Kept::trouble)
                .filter(trouble -> !trouble.isEmpty())
                .forEach(troubles::add);
        List<RecordedSession> recorded = recorded(kept);
        CourseJson json = course ? ofCourse(recorded) : ofFolder(recorded);
        overview.ifPresent(known -> troubles.addAll(known.status().course().why()));
        json.left(troubles);
        json.undoable(marks.undoable());
        return json.toString();
    }

    private static List<RecordedSession> recorded(List<SessionCache.Kept> kept) {
        List<RecordedSession> recorded = new ArrayList<>();
        for (SessionCache.Kept session : kept) {
            session.state().ifPresent(state -> recorded.add(new RecordedSession(session.folder(), state)));
        }
        recorded.sort(Comparator.comparing(RecordedSession::began));
        return recorded;
    }

    private CourseJson ofFolder(List<RecordedSession> recorded) {
        Path name = folder.toAbsolutePath().normalize().getFileName();
        CourseJson json = new CourseJson(name == null ? "Sessions" : name.toString(), here.zone());
        recorded.forEach(session -> json.session(session, Optional.empty(), standing(session)));
        return json;
    }

    private CourseJson ofCourse(List<RecordedSession> recorded) throws ProblemException {
        Course known = new TargetPaces(here, DayService.SOLE_PRESENTER).aimed(CourseReader.readable(folder, scripts));
        Map<Lesson, List<RecordedSession>> byLesson = new HashMap<>();
        for (RecordedSession session : recorded) {
            lesson(known.lessons(), session)
                    .ifPresent(lesson -> byLesson.computeIfAbsent(lesson, none -> new ArrayList<>())
                            .add(session));
        }
        CourseStatus view = CourseStatus.of(known, new CourseSessions(byLesson, List.of()), here, plans::plan);
        overview = Optional.of(new CourseOverview(view, byLesson));
        CourseJson json = new CourseJson(known.title(), here.zone());
        json.board(view, here.zone());
        for (LessonState state : view.board().lessons()) {
            for (RecordedSession session : byLesson.getOrDefault(state.lesson(), List.of())) {
                json.session(session, Optional.of(state), standing(session));
            }
        }
        return json;
    }

    private Optional<Lesson> lesson(List<Lesson> lessons, RecordedSession session) {
        return CourseSessions.lesson(lessons, session.state().script(), session.folder(), folder.resolve("sessions"));
    }

    private String standing(RecordedSession session) {
        if (isReadElsewhere(session.folder())) {
            return CourseJson.READ_ELSEWHERE;
        }
        return session.state().takes().rolling() ? "broken off, or still being read" : "finished";
    }

    private boolean isReadElsewhere(Path session) {
        return SessionFolder.isOpenElsewhere(session, here.locks());
    }

    @Override
    public Optional<String> deskElsewhere(String session) throws InterruptedException {
        Optional<Path> read = folders(session).filter(this::isReadElsewhere);
        Optional<DeskElsewhere> desk = read.isEmpty() ? Optional.empty() : DeskElsewhere.of(read.get());
        return desk.isEmpty() ? Optional.empty() : desk.get().address();
    }

    private Optional<Path> folders(String session) {
        try {
            return named(session, states.folders());
        } catch (ProblemException e) {
            return Optional.empty();
        }
    }
}
