package org.bookholder.app.film;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.bookholder.app.course.LessonPlace;
import org.bookholder.app.delivery.DeliveryProfiles;
import org.bookholder.app.delivery.ExportCheckService;
import org.bookholder.app.delivery.ExportJob;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.environment.ProgressMeter;
import org.bookholder.app.reading.OptionalEars;
import org.bookholder.app.session.CourseHabits;
import org.bookholder.app.session.StoredSession;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Text;
import org.bookholder.delivery.CheckReport;
import org.bookholder.files.FileNames;
import org.bookholder.film.FilmMade;
import org.bookholder.film.FilmMaker;
import org.bookholder.film.FilmOrder;
import org.bookholder.film.picture.ClipStore;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;

/** Makes the film of a session from its cut and its footage. Confined to one thread. */
public final class FilmService {
    /** The folder of a session's films. */
    static final String FOLDER = "film";

    /** Stands after a lesson's name in that of its draft. */
    private static final String DRAFT = "-draft";

    private static final int MOST_AT_ONCE = 4;

    private final Environment here;
    private final FilmRequest request;
    private final Consumer<Progress> progress;
    private final Interruption stop;

    /** Creates one that can be stopped; then nothing is left behind. */
    public FilmService(Environment here, FilmRequest request, Consumer<Progress> progress, Interruption stop) {
        this.here = here;
        this.request = request;
        this.progress = progress;
        this.stop = stop;
    }

    /**
     * Makes the film.
     *
     * @throws ProblemException if a file is missing or cannot be read, there is nothing to use for a line of a final film, the
     *     profile asks for what cannot be made, or there is no room; then nothing is left behind
     */
    public FilmResult make() throws ProblemException {
        LessonPlace place = LessonPlace.of(request.place(), here);
        Set<Integer> onlyNow =
                request.leaveOut().isEmpty() ? Set.of() : FilmDecisions.leaveOut(place, request.leaveOut(), here);
        List<StoredSession> sessions = new ArrayList<>();
        try {
            for (Path session : place.sessions()) {
                sessions.add(StoredSession.open(here, session));
            }
            return make(place, sessions, onlyNow);
        } finally {
            sessions.forEach(StoredSession::close);
        }
    }

    private FilmResult make(LessonPlace place, List<StoredSession> sessions, Set<Integer> onlyNow)
            throws ProblemException {
        FilmPlanning planning = FilmPlanning.of(here, request, place, sessions, onlyNow, stop);
        Path session = sessions.get(sessions.size() - 1).folder().path();
        demand(planning, session);
        Optional<DraftShelf> shelf = request.draft() && request.out().isEmpty()
                ? Optional.of(DraftShelf.of(session, place.lesson().isPresent()))
                : Optional.empty();
        FilmOrder order = new FilmOrder(
                planning.plan(),
                planning.format(),
                planning.lesson(),
                request.draft(),
                wanted(session, planning, shelf),
                shelf.map(DraftShelf::folder));
        Optional<FilmMade> before = Optional.empty();
        FilmMade made;
        if (request.draft()) {
            made = film(order, clips(session));
            if (shelf.isPresent()) {
                shelf.get().keep(made, planning.plan().fingerprint(planning.lesson()));
            }
        } else {
            FilmShelf films = new FilmShelf(session.resolve(FOLDER));
            String madeFrom = planning.fingerprint();
            // Films of a folder without course.yaml went into the session once.
            Path once = session.resolve(FOLDER).resolve(order.wanted().getFileName());
            before = request.anew()
                    ? Optional.empty()
                    : films.made(order.wanted(), madeFrom)
                            .or(() -> request.out().isEmpty() ? films.made(once, madeFrom) : Optional.empty());
            made = before.isPresent() ? before.get() : film(order, clips(session));
            if (before.isEmpty()) {
                films.keep(order.wanted(), made, madeFrom);
            }
        }
        List<String> remarks = new ArrayList<>(planning.remarks());
        Optional<CheckReport> check = request.check() && !request.draft()
                ? Optional.of(check(made.file(), planning, remarks))
                : Optional.empty();
        return new FilmResult(
                made,
                before.isPresent(),
                planning.plan(),
                place.sessions(),
                HeardTake.lines(planning.heard(), place.sessions()),
                planning.sentences(),
                remarks,
                check);
    }

    /** Where the clips are kept: with the session, if it can be written. */
    private Optional<ClipStore> clips(Path session) {
        Path folder = session.resolve(FOLDER).resolve(request.draft() ? "draft-clips" : "clips");
        return Files.isWritable(session) ? Optional.of(new ClipStore(folder)) : Optional.empty();
    }

    private FilmMade film(FilmOrder order, Optional<ClipStore> clips) throws ProblemException {
        ProgressMeter meter = new ProgressMeter(here.nanoTime(), progress);
        String name = String.valueOf(order.wanted().getFileName());
        int atOnce = Math.min(MOST_AT_ONCE, Runtime.getRuntime().availableProcessors());
        try {
            return new FilmMaker(order, clips, atOnce, part -> {
                        stop.check();
                        meter.reached(name, part);
                    })
                    .make();
        } catch (ProblemException e) {
            // Ctrl-C at a terminal ends FFmpeg, too, which then seems to have failed.
            stop.check();
            throw e;
        }
    }

    private void demand(FilmPlanning planning, Path session) throws ProblemException {
        FilmPlan plan = planning.plan();
        if (plan.clips().stream().noneMatch(clip -> clip.used())) {
            throw new ProblemException(
                    "no line of it was read to its end, so that there is nothing to show",
                    session.toString(),
                    "read it first, or name another session");
        }
        if (request.draft()) {
            return;
        }
        if (planning.lost().isPresent()) {
            throw planning.lost().get();
        }
        if (!planning.filmed()) {
            throw new ProblemException(
                    "no camera's file was matched with it",
                    session.toString(),
                    "match them first: bookholder match " + session
                            + " FILE...; or make a draft of the sound with --draft");
        }
        if (!plan.missing().isEmpty()) {
            throw new ProblemException(
                    "there is nothing to use for " + Text.lines(plan.missing()),
                    session.toString(),
                    "pick them up, leave them out with --leave-out, or make a draft with --draft");
        }
        if (!plan.unseen().isEmpty()) {
            throw new ProblemException(
                    "no camera's file shows " + Text.lines(plan.unseen()),
                    session.toString(),
                    "match the file that does: bookholder match " + session + " FILE; or make a draft with --draft");
        }
        if (!planning.troubles().isEmpty()) {
            throw planning.troubles().get(0);
        }
    }

    private Path wanted(Path session, FilmPlanning planning, Optional<DraftShelf> shelf) throws ProblemException {
        String ending = planning.format().container();
        if (request.out().isPresent()) {
            Path out = request.out().get();
            if (!String.valueOf(out.getFileName()).endsWith("." + ending)) {
                throw new ProblemException(
                        "the film is of the kind " + ending, out.toString(), "name a file that ends in ." + ending);
            }
            return out;
        }
        Optional<Path> script = planning.script();
        String name = name(planning.lesson(), script);
        if (shelf.isPresent()) {
            return shelf.get().folder().resolve(name + DRAFT + "." + ending);
        }
        // Beside the lessons, with a course.yaml or without; in the session if the lesson's file is gone or lies on a
        // card or share
        // that can only be read.
        Optional<Path> exports =
                script.map(CourseHabits::courseOf).map(Course::exportsIn).filter(FilmService::canBeWritten);
        return exports.orElse(session.resolve(FOLDER)).resolve(name + "." + ending);
    }

    private static boolean canBeWritten(Path folder) {
        Path there = Files.isDirectory(folder) ? folder : Objects.requireNonNull(folder.getParent());
        return Files.isWritable(there);
    }

    /** The lesson's name in its course; without its file, its title as delivery profiles take it. */
    static String name(Script lesson, Optional<Path> script) {
        return script.map(CourseReader::nameOf).orElseGet(() -> FileNames.ofTitle(FileNames.plain(lesson.title())));
    }

    private CheckReport check(Path film, FilmPlanning planning, List<String> remarks) throws ProblemException {
        ExportJob.Choices choices =
                new ExportJob.Choices(request.profile(), DeliveryProfiles.usual(here), planning.script(), true);
        ExportJob job = ExportJob.of(film, choices, here).without(planning.leftOut());
        try (OptionalEars ears =
                OptionalEars.load(here, here.model(), job.lesson().isPresent())) {
            CheckReport report = new ExportCheckService(here, progress, stop).check(job, ears.ears());
            ExportCheckService.keep(job, report).ifPresent(remarks::add);
            return report;
        }
    }
}
