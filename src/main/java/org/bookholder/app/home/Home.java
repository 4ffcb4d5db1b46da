package org.bookholder.app.home;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.jobs.Jobs;
import org.bookholder.app.work.WorkList;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.DeskCourse;
import org.bookholder.desk.DeskCredentials;
import org.bookholder.desk.DeskHome;
import org.bookholder.desk.DeviceFile;
import org.bookholder.desk.PartsFeed;
import org.bookholder.desk.ServedSession;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.desk.http.DeskAddress;
import org.bookholder.desk.http.DeskServer;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.journal.FolderLock;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.runtime.stage.Workers;

/**
 * The program's own page, and what stays running behind it. A user has one at a time. Its methods are for the thread that has
 * opened it.
 */
public final class Home implements AutoCloseable {
    private final FolderLock lock;
    private final DeskServer server;
    private final AccessControl admission;
    private final DeskCredentials keys;
    private final HomeReading reading;
    private final Jobs jobs;
    private final HomeCourses courses;
    private final HomeRooms rooms;
    private final IdleTimer idle;
    private final Latest<Boolean> quitting;
    private final Workers workers;

    private Home(
            FolderLock lock,
            DeskServer server,
            AccessControl admission,
            DeskCredentials keys,
            HomeReading reading,
            Jobs jobs,
            HomeCourses courses,
            HomeRooms rooms,
            IdleTimer idle,
            Latest<Boolean> quitting,
            Workers workers) {
        this.lock = lock;
        this.server = server;
        this.admission = admission;
        this.keys = keys;
        this.reading = reading;
        this.jobs = jobs;
        this.courses = courses;
        this.rooms = rooms;
        this.idle = idle;
        this.quitting = quitting;
        this.workers = workers;
    }

    /** Where the lock and the keys of a user's home lie. */
    static Path folder(Environment here) {
        return here.data().resolve("home");
    }

    /**
     * Opens home.
     *
     * @return empty if the user has it open already: see {@link RunningHome}
     * @throws ProblemException if something stands in the way
     */
    public static Optional<Home> open(Environment here, HomeRequest request) throws ProblemException {
        Path folder = folder(here);
        Optional<FolderLock> lock;
        try {
            lock = FolderLock.tryTake(PrivateFiles.createFolder(folder), here.locks());
        } catch (IOException e) {
            throw DiskProblems.writing(folder, e);
        }
        if (lock.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(open(here, request, lock.get(), folder));
        } catch (ProblemException | RuntimeException e) {
            lock.get().close();
            throw e;
        }
    }

    private static Home open(Environment here, HomeRequest request, FolderLock lock, Path folder)
            throws ProblemException {
        FaultLog log = FaultLog.in(folder, here.clock());
        HomeReading reading = new HomeReading(here, faults(log, "reading"));
        Jobs jobs = new Jobs(() -> reading.standing().goesOn(), faults(log, "job"));
        HomeCourses courses = courses(here, reading, request);
        HomeSettings settings = new HomeSettings(here);
        BeforeReading before = new BeforeReading(here, settings);
        FolderList folders = new FolderList(request.userHome());
        Latest<Boolean> quitting = new Latest<>(false);
        KeptOrders orders = new KeptOrders(here.data().resolve("orders.json"));
        AllowedPaths paths = new AllowedPaths(folders, here, courses.known());
        WorkList work = new WorkList(here, courses::address, courses::letGo);
        BrokenOff brokenOff = new BrokenOff(here, jobs, work);
        HomeActions actions = new HomeActions(
                here,
                courses,
                reading,
                settings,
                before,
                paths,
                jobs,
                work,
                brokenOff,
                orders,
                here::today,
                () -> quitting.set(true));
        IdleTimer idle = new IdleTimer(here.nanoTime());
        PartsFeed feed = new PartsFeed();
        HomeDay day = new HomeDay(here);
        HomeRooms rooms = HomeRooms.of(here, courses, reading, settings, paths, orders, actions::begin);
        HomeStage stage = new HomeStage(
                here, courses, brokenOff, reading, jobs, before, settings, rooms, day, orders, feed, idle);
        SecureRandom random = new SecureRandom();
        DeskCredentials fresh = DeskCredentials.of(folder, random);
        AccessControl admission =
                new AccessControl(fresh, false, random, here.nanoTime(), here.clock(), DeviceFile.in(folder));
        DeskServer server = DeskServer.open(
                new DeskAddress(false, fresh.port(), false, List.of()),
                new Rooms(courses, feed, actions, rooms.questions(), folders, idle, stage),
                admission,
                here.nanoTime());
        DeskCredentials keys = kept(fresh.at(server.port()), folder, server);
        Workers workers = workers(here, log, stage, rooms, jobs);
        return new Home(lock, server, admission, keys, reading, jobs, courses, rooms, idle, quitting, workers);
    }

    private static HomeCourses courses(Environment here, HomeReading reading, HomeRequest request)
            throws ProblemException {
        HomeCourses courses = new HomeCourses(here, reading);
        if (request.course().isPresent()) {
            courses.begin(request.course().get().toAbsolutePath().normalize());
        }
        return courses;
    }

    /** Keeps the keys; without them a second start could not find this one. */
    private static DeskCredentials kept(DeskCredentials keys, Path folder, DeskServer server) throws ProblemException {
        try {
            keys.keep(folder);
            return keys;
        } catch (ProblemException e) {
            server.close();
            throw e;
        }
    }

    private static Workers workers(Environment here, FaultLog log, HomeStage stage, HomeRooms rooms, Jobs jobs) {
        Workers workers = new Workers(here.nanoTime(), log::add);
        workers.takeOn(log.stage(() -> false));
        workers.takeOn(stage);
        rooms.stages().forEach(workers::takeOn);
        jobs.stages().forEach(workers::takeOn);
        return workers;
    }

    private static Consumer<Throwable> faults(FaultLog log, String role) {
        return fault -> log.add(new StageFault(role, StageFault.Consequence.GIVEN_UP, fault));
    }

    /** The address of its page; whoever has it may use it until the program ends. */
    public String address() {
        return address(server.port(), keys.key());
    }

    /** The address of its page for a browser that is started with it: it admits one page within a minute. */
    public String addressForBrowser() {
        return address(server.port(), admission.ticket());
    }

    private static String address(int port, String code) {
        return "http://127.0.0.1:" + port + "/#" + code;
    }

    /**
     * Reads the lesson that the page has asked for, to its end; otherwise returns at once.
     *
     * @param interrupted whether the program is to end
     * @return whether to go on: false when the page has asked to end, or nobody needs it any more
     */
    public boolean work(BooleanSupplier interrupted) {
        reading.work(interrupted);
        rooms.displays().work();
        return !quitting.get() && !idle.over();
    }

    @Override
    public void close() {
        jobs.stopAll();
        rooms.before().beforeReading();
        rooms.dialogs().close();
        workers.close();
        server.close();
        courses.close();
        rooms.close();
        lock.close();
    }

    /** What pages can reach. */
    private record Rooms(
            HomeCourses courses,
            PartsFeed feed,
            HomeActions actions,
            HomeQuestions questions,
            FolderList folders,
            IdleTimer idle,
            HomeStage stage)
            implements SessionDirectory, DeskHome {
        @Override
        public Optional<DeskHome> home() {
            return Optional.of(this);
        }

        @Override
        public Optional<ServedSession> session(String name) {
            return Optional.empty();
        }

        @Override
        public Optional<DeskCourse> course() {
            return Optional.empty();
        }

        @Override
        public Optional<SessionDirectory> course(String name) {
            return courses.directory(name);
        }

        @Override
        public Optional<String> open(String folder) {
            try {
                courses.open(Path.of(folder));
                stage.look();
                return Optional.empty();
            } catch (ProblemException | InvalidPathException e) {
                return Optional.of(String.valueOf(e.getMessage()));
            }
        }

        @Override
        public String asks() {
            return "Start Bookholder again: it opens its page by itself. Or give what stands after # in the address"
                    + " that the terminal shows";
        }

        @Override
        public Optional<String> act(String json) {
            Optional<String> refused = actions.act(json);
            stage.look();
            return refused;
        }

        @Override
        public String ask(String json) throws ProblemException {
            return questions.answer(json);
        }

        @Override
        public String dropped(Map<String, String> query, byte[] bytes) throws ProblemException {
            return questions.dropped(query, bytes);
        }

        @Override
        public String folder(String path) throws ProblemException {
            return folders.list(path);
        }

        @Override
        public String find(String name, long size) throws ProblemException {
            return JsonNodeFactory.instance
                    .objectNode()
                    .put("path", FileFinder.USUAL.find(name, size, places()).toString())
                    .toString();
        }

        /** Where a dropped file may lie, the likeliest first. */
        private List<Path> places() {
            String course = courses.seen().folder();
            return course.isEmpty() ? List.of(folders.userHome()) : List.of(Path.of(course), folders.userHome());
        }

        @Override
        public void seen() {
            idle.needed();
        }
    }
}
