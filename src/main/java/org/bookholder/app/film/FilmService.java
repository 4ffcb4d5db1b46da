package org.bookholder.app.film;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
import org.bookholder.app.session.StoredSession;
import org.bookholder.delivery.CheckReport;
import org.bookholder.film.FilmMade;
import org.bookholder.film.FilmMaker;
import org.bookholder.film.FilmOrder;
import org.bookholder.film.picture.ClipStore;
import org.bookholder.problem.ProblemException;

/** Makes the film of a session from its cut and its footage. Confined to one thread. */
public final class FilmService {
    private static final int MOST_AT_ONCE = 4;

    private final Environment here;
    private final FilmRequest request;
    private final Consumer<Progress> progress;
    private final Interruption stop;

    private Optional<ClipStore> kept = Optional.empty();
    private Optional<Path> finished = Optional.empty();

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
     * @param told where people read what comes of it
     * @param first is told what a draft does without, before it is made; of each thing
     * @throws ProblemException if a file is missing or cannot be read, there is nothing to use for a line of a final film, the
     *     profile asks for what cannot be made, or there is no room: all of it at once; then nothing is left behind
     */
    public FilmResult make(FilmObstacle.Told told, Consumer<FilmObstacle> first) throws ProblemException {
        LessonPlace place = LessonPlace.of(request.place(), here);
        Set<Integer> onlyNow =
                request.leaveOut().isEmpty() ? Set.of() : FilmDecisions.leaveOut(place, request.leaveOut(), here);
        List<StoredSession> sessions = new ArrayList<>();
        try {
            for (Path session : place.sessions()) {
                sessions.add(StoredSession.open(here, session));
            }
            return make(planning(place, sessions, onlyNow, told), place, first);
        } finally {
            sessions.forEach(StoredSession::close);
        }
    }

    /** What there is of the film if it was stopped, without a full stop. */
    public String ifStopped() {
        if (finished.isPresent()) {
            return "the film is made, but not checked: bookholder check " + finished.get();
        }
        return kept.filter(ClipStore::hasAny).isPresent()
                ? "no film was made; the pieces that were finished are kept, so that the next one is ready sooner"
                : "no film was made, and nothing is left of it";
    }

    private FilmPlanning planning(
            LessonPlace place, List<StoredSession> sessions, Set<Integer> onlyNow, FilmObstacle.Told told)
            throws ProblemException {
        FilmPlanning planning = FilmPlanning.of(here, request, place, sessions, onlyNow, stop);
        List<ProblemException> against = against(planning, place.last(), told);
        if (!against.isEmpty()) {
            throw ProblemException.together(against);
        }
        return planning;
    }

    private FilmResult make(FilmPlanning planning, LessonPlace place, Consumer<FilmObstacle> first)
            throws ProblemException {
        planning.obstacles().forEach(first);
        Path session = place.last();
        Optional<DraftShelf> shelf = shelf(place);
        kept = clips(session);
        FilmOrder order = new FilmOrder(
                planning.plan(),
                planning.format(),
                planning.lesson(),
                request.draft(),
                FilmPlace.wanted(request, session, planning, shelf),
                shelf.map(DraftShelf::folder));
        Optional<FilmMade> before = Optional.empty();
        FilmMade made;
        if (request.draft()) {
            made = film(order);
            if (shelf.isPresent()) {
                shelf.get().keep(made, planning.plan().fingerprint(planning.lesson()));
            }
        } else {
            FilmShelf films = new FilmShelf(session.resolve(FilmPlace.FOLDER));
            String madeFrom = planning.fingerprint();
            // Films of a folder without course.yaml went into the session once.
            Path once = session.resolve(FilmPlace.FOLDER).resolve(order.wanted().getFileName());
            before = request.anew()
                    ? Optional.empty()
                    : films.made(order.wanted(), madeFrom)
                            .or(() -> request.out().isEmpty() ? films.made(once, madeFrom) : Optional.empty());
            made = before.isPresent() ? before.get() : film(order);
            if (before.isEmpty()) {
                films.keep(order.wanted(), made, madeFrom);
            }
        }
        finished = Optional.of(made.file());
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
                planning.obstacles(),
                check);
    }

    /** Where a draft goes that the page shows. */
    private Optional<DraftShelf> shelf(LessonPlace place) {
        return request.draft() && request.out().isEmpty()
                ? Optional.of(DraftShelf.of(place.last(), place.lesson().isPresent()))
                : Optional.empty();
    }

    /** Where the clips are kept: with the session, if it can be written. */
    private Optional<ClipStore> clips(Path session) {
        Path folder = session.resolve(FilmPlace.FOLDER).resolve(request.draft() ? "draft-clips" : "clips");
        return Files.isWritable(session) ? Optional.of(new ClipStore(folder)) : Optional.empty();
    }

    private FilmMade film(FilmOrder order) throws ProblemException {
        ProgressMeter meter = new ProgressMeter(here.nanoTime(), progress);
        String name = String.valueOf(order.wanted().getFileName());
        int atOnce = Math.min(MOST_AT_ONCE, Runtime.getRuntime().availableProcessors());
        try {
            return new FilmMaker(order, kept, atOnce, part -> {
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

    /** All that keeps this film from being made. */
    private List<ProblemException> against(FilmPlanning planning, Path session, FilmObstacle.Told told) {
        List<ProblemException> against = new ArrayList<>();
        if (planning.plan().clips().stream().noneMatch(clip -> clip.used())) {
            against.add(new ProblemException(
                    "no line of it was read to its end, so that there is nothing to show",
                    session.toString(),
                    "read it first, or name another session"));
        }
        if (!request.draft()) {
            planning.obstacles().forEach(obstacle -> against.add(obstacle.problem(told)));
        }
        FilmPlace.wrongEnding(request, planning.format()).ifPresent(against::add);
        return against;
    }

    private CheckReport check(Path film, FilmPlanning planning, List<String> remarks) throws ProblemException {
        ExportJob.Choices choices =
                new ExportJob.Choices(request.profile(), DeliveryProfiles.usual(here), planning.script(), true);
        ExportJob job = ExportJob.of(film, choices, here).made(planning.leftOut(), planning.stills());
        try (OptionalEars ears =
                OptionalEars.load(here, here.model(), job.lesson().isPresent())) {
            CheckReport report = new ExportCheckService(here, progress, stop).check(job, ears.ears());
            ExportCheckService.keep(job, report).ifPresent(remarks::add);
            return report;
        }
    }
}
