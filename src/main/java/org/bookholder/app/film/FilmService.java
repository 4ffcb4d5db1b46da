package org.bookholder.app.film;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.bookholder.app.delivery.DeliveryProfiles;
import org.bookholder.app.delivery.ExportCheckService;
import org.bookholder.app.delivery.ExportJob;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.environment.ProgressMeter;
import org.bookholder.app.reading.OptionalEars;
import org.bookholder.app.session.LessonLines;
import org.bookholder.app.session.SessionFolders;
import org.bookholder.app.session.StoredSession;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Text;
import org.bookholder.cutlist.PunchIn;
import org.bookholder.delivery.CheckReport;
import org.bookholder.delivery.Profile;
import org.bookholder.files.FileNames;
import org.bookholder.film.FilmMade;
import org.bookholder.film.FilmMaker;
import org.bookholder.film.FilmOrder;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.format.FormatChooser;
import org.bookholder.film.format.FrameFit;
import org.bookholder.film.plan.Camera;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.FilmPlanner;
import org.bookholder.film.plan.FilmRules;
import org.bookholder.footage.PictureFacts;
import org.bookholder.handoff.captions.Chapter;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/** Makes the film of a session from its cut and its footage. Confined to one thread. */
public final class FilmService {
    private static final int MOST_AT_ONCE = 4;

    private final Environment here;
    private final FilmRequest request;
    private final Consumer<Progress> progress;
    private final Interruption stop;
    private final FilmRules rules;

    /** Creates one that can be stopped; then nothing is left behind. */
    public FilmService(Environment here, FilmRequest request, Consumer<Progress> progress, Interruption stop) {
        this.here = here;
        this.request = request;
        this.progress = progress;
        this.stop = stop;
        rules = request.alternate()
                ? FilmRules.defaults()
                : FilmRules.defaults().asShot();
    }

    /**
     * Makes the film.
     *
     * @throws ProblemException if a file is missing or cannot be read, there is nothing to use for a line of a final film, the
     *     profile asks for what cannot be made, or there is no room; then nothing is left behind
     */
    public FilmResult make() throws ProblemException {
        FilmPlace place = FilmPlace.of(request.place(), here);
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

    private FilmResult make(FilmPlace place, List<StoredSession> sessions, Set<Integer> onlyNow)
            throws ProblemException {
        StoredSession last = sessions.get(sessions.size() - 1);
        Script lesson = place.lesson().orElseGet(() -> last.state().script());
        Optional<Path> script = script(lesson);
        Profile profile = profile(script);
        List<FilmPlanner.Sources> sources = new ArrayList<>();
        for (StoredSession kept : sessions) {
            sources.add(FilmFootage.of(kept));
        }
        List<Camera> cameras =
                sources.stream().flatMap(s -> s.cameras().stream()).toList();
        FrameRate rate = FormatChooser.rate(
                profile,
                cameras.stream()
                        .flatMap(c -> c.footage().picture().stream())
                        .map(p -> p.rate())
                        .findFirst()
                        .orElse(FrameRate.FPS_25));
        List<PictureFacts> pictures =
                cameras.stream().map(Camera::picture).distinct().toList();
        Set<Integer> leftOut = new TreeSet<>(LessonLines.leftOut(
                lesson, sessions.stream().map(StoredSession::state).toList()));
        leftOut.addAll(onlyNow);
        LessonCut cut = LessonCut.of(lesson, sessions, sources, rules.cut(), leftOut, stop);
        List<String> remarks = new ArrayList<>();
        if (!onlyNow.isEmpty()) {
            remarks.add(Text.lines(List.copyOf(new TreeSet<>(onlyNow)))
                    + " left out of this film only: no session has it yet, so nothing was noted");
        }
        FilmFormat format = format(profile, pictures, rate, cut.length(), remarks);
        FilmPlan plan = FilmPlanner.plan(cut.pieces(), rate, framing(pictures, format));
        if (!Chapter.wanted(lesson)) {
            remarks.add(Chapter.NONE);
        }
        Path session = last.folder().path();
        demand(plan, !cameras.isEmpty(), session);
        FilmMade made = film(new FilmOrder(
                plan, format, lesson, request.draft(), wanted(session, script, lesson, format.container())));
        Optional<CheckReport> check = request.check() && !request.draft()
                ? Optional.of(check(made.file(), script, leftOut, remarks))
                : Optional.empty();
        return new FilmResult(made, plan, place.sessions(), cut.marked(), remarks, check);
    }

    private FilmMade film(FilmOrder order) throws ProblemException {
        ProgressMeter meter = new ProgressMeter(here.nanoTime(), progress);
        String name = String.valueOf(order.wanted().getFileName());
        int atOnce = Math.min(MOST_AT_ONCE, Runtime.getRuntime().availableProcessors());
        try {
            return new FilmMaker(order, atOnce, part -> {
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

    /** The lesson's file, if it is still there. */
    private static Optional<Path> script(Script lesson) {
        return Optional.of(Path.of(lesson.source()).toAbsolutePath().normalize())
                .filter(Files::isRegularFile);
    }

    private Profile profile(Optional<Path> script) throws ProblemException {
        Optional<Path> named = request.profile();
        Optional<Path> folder = script.flatMap(CourseReader::around);
        if (named.isEmpty() && folder.isPresent()) {
            named = CourseReader.readable(folder.get()).delivery();
        }
        return named.isPresent() ? DeliveryProfiles.read(named.get(), here) : DeliveryProfiles.usual(here);
    }

    private FilmFormat format(
            Profile profile, List<PictureFacts> pictures, FrameRate rate, StreamTime length, List<String> remarks)
            throws ProblemException {
        if (request.draft()) {
            return FormatChooser.draft(profile, rate);
        }
        FormatChooser.Chosen chosen = FormatChooser.of(profile, pictures, rate, length, request.enlarge());
        remarks.addAll(chosen.remarks());
        return chosen.format();
    }

    /** As close as each camera's picture allows without loss; a picture between bars stays as it is. */
    private PunchIn framing(List<PictureFacts> pictures, FilmFormat format) {
        double shape = (double) format.width() / format.height();
        int most = PunchIn.FULL;
        for (int i = 0; i < pictures.size(); i++) {
            FrameFit fit = FrameFit.of(pictures.get(i), shape);
            int own = fit.barred()
                    ? PunchIn.FULL
                    : PunchIn.most((int) fit.width(), (int) fit.height(), format.width(), format.height());
            most = i == 0 ? own : Math.min(most, own);
        }
        return new PunchIn(rules.step(), most);
    }

    private void demand(FilmPlan plan, boolean filmed, Path session) throws ProblemException {
        if (plan.clips().stream().noneMatch(clip -> clip.used())) {
            throw new ProblemException(
                    "no line of it was read to its end, so that there is nothing to show",
                    session.toString(),
                    "read it first, or name another session");
        }
        if (request.draft()) {
            return;
        }
        if (!filmed) {
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
    }

    private Path wanted(Path session, Optional<Path> script, Script lesson, String ending) throws ProblemException {
        if (request.out().isPresent()) {
            Path out = request.out().get();
            if (!String.valueOf(out.getFileName()).endsWith("." + ending)) {
                throw new ProblemException(
                        "the film is of the kind " + ending, out.toString(), "name a file that ends in ." + ending);
            }
            return out;
        }
        String name = script.map(FileNames::stem).orElseGet(() -> SessionFolders.plain(lesson.title()));
        Optional<Path> exports = script.flatMap(CourseReader::around).map(Course::exportsIn);
        return request.draft() || exports.isEmpty()
                ? session.resolve("film").resolve(name + (request.draft() ? "-draft." : ".") + ending)
                : exports.get().resolve(name + "." + ending);
    }

    private CheckReport check(Path film, Optional<Path> script, Set<Integer> leftOut, List<String> remarks)
            throws ProblemException {
        ExportJob job = ExportJob.of(
                        film,
                        new ExportJob.Choices(request.profile(), DeliveryProfiles.usual(here), script, true),
                        here)
                .without(leftOut);
        try (OptionalEars ears =
                OptionalEars.load(here, here.model(), job.lesson().isPresent())) {
            CheckReport report = new ExportCheckService(here, progress, stop).check(job, ears.ears());
            ExportCheckService.keep(job, report).ifPresent(remarks::add);
            return report;
        }
    }
}
