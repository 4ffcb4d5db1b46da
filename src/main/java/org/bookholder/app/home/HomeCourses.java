package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.course.CourseDesk;
import org.bookholder.app.course.CourseJson;
import org.bookholder.app.course.CourseOverview;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.SessionCache;
import org.bookholder.app.session.SessionFolders;
import org.bookholder.course.CourseReader;
import org.bookholder.course.board.Board;
import org.bookholder.desk.DeskCourse;
import org.bookholder.desk.ServedSession;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Latest;

/** The courses that are known, and the one that the page shows. Safe for use by several threads. */
final class HomeCourses implements AutoCloseable {
    private final Environment here;
    private final HomeReading reading;
    private final KnownCourses known;
    private final Map<String, CourseDesk> desks = new HashMap<>();
    private final Latest<Seen> seen = new Latest<>(Seen.NOTHING);
    private final Latest<Optional<Looking>> looking = new Latest<>(Optional.empty());
    private final Latest<Runnable> tells = new Latest<>(() -> {});

    /**
     * How the course that the page shows was last seen.
     *
     * @param name its name in addresses; empty if there is none
     * @param folder its folder
     * @param overview the course; empty if it can't be read
     * @param trouble why it can't be read; empty if it can
     */
    record Seen(String name, String folder, Optional<CourseOverview> overview, String trouble) {
        static final Seen NOTHING = new Seen("", "", Optional.empty(), "");
    }

    /** How many sessions of a course are known while it is looked at for the first time. */
    record Looking(int known, int all) {}

    HomeCourses(Environment here, HomeReading reading) {
        this.here = here;
        this.reading = reading;
        known = new KnownCourses(here.data().resolve("courses.json"));
    }

    KnownCourses known() {
        return known;
    }

    Seen seen() {
        return seen.get();
    }

    /**
     * The course that the page shows.
     *
     * @param room which of the page's rooms asks for it
     * @throws ProblemException if none is open, or it can't be read
     */
    CourseOverview overview(String room) throws ProblemException {
        Seen now = seen.get();
        return now.overview()
                .orElseThrow(() -> new ProblemException(
                        now.trouble().isEmpty() ? "no course is open" : now.trouble(), room, "open one first"));
    }

    /** How far a course is looked at of which nothing can be shown yet; empty while that is not so. */
    Optional<Looking> looking() {
        return looking.get();
    }

    /** Has {@code tell} called while a course is looked at for the first time, by the thread that looks. */
    void whileLooking(Runnable tell) {
        tells.set(tell);
    }

    /**
     * Another window may have opened another course since a page was shown.
     *
     * @param asked what a page asks for; it may name its course in {@code of}
     * @throws ProblemException if that is not the one that is shown now
     */
    void mustBeOpen(JsonNode asked) throws ProblemException {
        String of = asked.path("of").asText();
        if (asked.has("of") && !of.equals(seen().name())) {
            throw new ProblemException("another course is open now", of, "look again");
        }
    }

    /**
     * Opens a course and shows it.
     *
     * @throws ProblemException if the folder is no course that can be read
     */
    synchronized void open(Path folder) throws ProblemException {
        begin(folder);
        look();
    }

    /** The same, but looks at it later. */
    synchronized void begin(Path folder) throws ProblemException {
        CourseReader.readable(folder);
        known.use(folder);
    }

    /** Shows a course that is known; says whether there is one of that name. */
    synchronized boolean choose(String name) throws ProblemException {
        Optional<KnownCourses.Entry> entry = known.find(name);
        if (entry.isPresent()) {
            known.use(Path.of(entry.get().folder()));
            look();
        }
        return entry.isPresent();
    }

    /** Takes a course off the list. */
    synchronized void forget(String name) throws ProblemException {
        known.forget(name);
        CourseDesk desk = desks.remove(name);
        if (desk != null) {
            desk.close();
        }
        look();
    }

    /** Looks at the course that the page shows. Takes a while if much has changed. */
    synchronized void look() {
        Optional<KnownCourses.Entry> first = known.all().stream().findFirst();
        if (first.isEmpty()) {
            seen.set(Seen.NOTHING);
            return;
        }
        KnownCourses.Entry entry = first.get();
        if (!seen.get().name().equals(entry.name())) {
            seen.set(new Seen(entry.name(), entry.folder(), Optional.empty(), ""));
        }
        boolean fresh = seen.get().overview().isEmpty() && seen.get().trouble().isEmpty();
        SessionCache.Progress progress = (sessions, all) -> {
            if (fresh) {
                looking.set(Optional.of(new Looking(sessions, all)));
                tells.get().run();
            }
        };
        try {
            Optional<CourseOverview> overview = desk(entry).overview(progress);
            seen.set(new Seen(entry.name(), entry.folder(), overview, ""));
            overview.ifPresent(course ->
                    known.saw(Path.of(entry.folder()), course.status().course().title(), note(course)));
        } catch (ProblemException e) {
            boolean gone = !Files.isDirectory(Path.of(entry.folder()));
            seen.set(new Seen(
                    entry.name(),
                    entry.folder(),
                    Optional.empty(),
                    gone ? "Its folder is not there any more, or its disk is not plugged in." : e.getMessage()));
        } finally {
            looking.set(Optional.empty());
        }
    }

    private static String note(CourseOverview course) {
        Board board = course.status().board();
        int open = board.withPickups();
        int all = board.lessons().size() + board.course().unreadable().size();
        return board.finished()
                ? "ready to go out"
                : all + (all == 1 ? " lesson, " : " lessons, ") + board.recorded() + " recorded"
                        + (open == 0 ? "" : ", " + open + " with pickups");
    }

    /** The desk of a course that is known; empty if none of that name is. */
    synchronized Optional<CourseDesk> desk(String name) {
        return known.find(name).map(this::desk);
    }

    private CourseDesk desk(KnownCourses.Entry entry) {
        return desks.computeIfAbsent(entry.name(), none -> new CourseDesk(here, Path.of(entry.folder()), true));
    }

    /** A course with its sessions; that of the lesson that is being read is the running one. */
    Optional<SessionDirectory> directory(String name) {
        return desk(name).map(desk -> new WithRunningSession(desk, reading));
    }

    /** The address of a session's page, below home's own; empty while no course is open. */
    Optional<String> address(Path session) {
        String course = seen().name();
        return course.isEmpty()
                ? Optional.empty()
                : Optional.of("course/" + course + "/session/" + CourseJson.name(session) + "/");
    }

    /** The folders of all sessions that lie where those of a course lie, also of damaged ones. */
    List<Path> sessions(Seen seen) {
        try {
            String course = seen.folder();
            Path usual = here.sessions();
            return SessionFolders.folders(
                    course.isEmpty() ? List.of(usual) : List.of(Path.of(course).resolve("sessions"), usual));
        } catch (ProblemException e) {
            // The course itself can't be shown then, and says why.
            return List.of();
        }
    }

    /** What was found in them when the course was last looked at. */
    synchronized List<SessionCache.Kept> kept(Seen seen) {
        return desk(seen.name()).map(CourseDesk::kept).orElse(List.of());
    }

    /** Closes a session that is only looked at, so that it can be changed. */
    synchronized void letGo(Path session) {
        desks.values().forEach(desk -> desk.letGo(session));
    }

    @Override
    public synchronized void close() {
        desks.values().forEach(CourseDesk::close);
        desks.clear();
    }

    private record WithRunningSession(CourseDesk desk, HomeReading reading) implements SessionDirectory {
        @Override
        public Optional<ServedSession> session(String name) throws ProblemException {
            HomeReading.Standing now = reading.standing();
            if (reading.leaving()
                    .filter(folder -> CourseJson.name(folder).equals(name))
                    .isPresent()) {
                throw new ProblemException("the next lesson is being opened", "the desk", "wait a moment");
            }
            boolean wanted = now.session()
                    .filter(folder -> CourseJson.name(folder).equals(name))
                    .isPresent();
            if (!wanted || !now.goesOn()) {
                return desk.session(name);
            }
            if (now.place().isEmpty()) {
                throw new ProblemException("this session is being opened", "the desk", "wait a moment");
            }
            return now.place();
        }

        @Override
        public Optional<DeskCourse> course() {
            return Optional.of(desk);
        }

        @Override
        public Optional<String> running() {
            HomeReading.Standing now = reading.standing();
            return now.place().isPresent() ? now.session().map(CourseJson::name) : Optional.empty();
        }
    }
}
