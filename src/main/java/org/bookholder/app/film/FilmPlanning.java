package org.bookholder.app.film;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.bookholder.app.course.LessonPlace;
import org.bookholder.app.delivery.DeliveryProfiles;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.session.ChosenReadings;
import org.bookholder.app.session.LessonLines;
import org.bookholder.app.session.StoredSession;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Text;
import org.bookholder.cutlist.PunchIn;
import org.bookholder.delivery.Finding;
import org.bookholder.delivery.Profile;
import org.bookholder.files.DiskProblems;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.format.FormatChooser;
import org.bookholder.film.format.FrameFit;
import org.bookholder.film.plan.Camera;
import org.bookholder.film.plan.CoverPlanner;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.FilmPlanner;
import org.bookholder.film.plan.FilmRules;
import org.bookholder.film.plan.Fingerprint;
import org.bookholder.film.plan.Shot;
import org.bookholder.footage.PictureFacts;
import org.bookholder.handoff.captions.Chapter;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/**
 * Works out what a film is made of, and as what it goes out.
 *
 * @param plan what it is made of
 * @param sources what recorded each of its sessions
 * @param format what it is to be as a file
 * @param goesOut what the finished film is to be: of a draft another format than its own
 * @param lesson the lesson
 * @param script the lesson's file, if it is still there
 * @param heard from which file each take is heard
 * @param filmed whether any camera's file was matched and can be used
 * @param obstacles all that stands in the way of a finished film
 * @param closest how close it can be framed, in per cent of the picture as shot
 * @param leftOut lines that it does without on purpose, by the lesson's numbers
 * @param marked lines that are used though they were not read clean, one sentence each
 * @param remarks what else a person should know, one sentence each
 */
record FilmPlanning(
        FilmPlan plan,
        List<FilmPlanner.Sources> sources,
        FilmFormat format,
        FilmFormat goesOut,
        Script lesson,
        Optional<Path> script,
        List<HeardTake> heard,
        boolean filmed,
        List<FilmObstacle> obstacles,
        int closest,
        Set<Integer> leftOut,
        List<LessonCut.Mark> marked,
        List<String> remarks) {
    /**
     * Works it out.
     *
     * @param sessions the open sessions of {@code place}
     * @param onlyNow lines that this film alone does without
     * @throws ProblemException if a file is missing or cannot be read, or the profile asks for what cannot be made
     */
    static FilmPlanning of(
            Environment here,
            FilmRequest request,
            LessonPlace place,
            List<StoredSession> sessions,
            Set<Integer> onlyNow,
            Interruption stop)
            throws ProblemException {
        FilmRules rules = request.alternate()
                ? FilmRules.defaults()
                : FilmRules.defaults().asShot();
        Script lesson = place.lesson()
                .orElseGet(() -> sessions.get(sessions.size() - 1).state().script());
        Optional<Path> script = file(lesson);
        Profile profile = profile(request, script, here);
        List<String> aboutFiles = new ArrayList<>();
        List<FilmFootage.Found> found = found(sessions, aboutFiles);
        List<FilmPlanner.Sources> sources =
                found.stream().map(FilmFootage.Found::sources).toList();
        List<Camera> cameras =
                sources.stream().flatMap(s -> s.cameras().stream()).toList();
        FrameRate rate = rate(profile, cameras);
        List<PictureFacts> pictures =
                cameras.stream().map(Camera::picture).distinct().toList();
        Set<Integer> leftOut = leftOut(lesson, sessions, onlyNow);
        LessonCut cut = LessonCut.of(lesson, sessions, found, rules.cut(), leftOut, stop);
        List<String> remarks = remarks(onlyNow, cut, lesson, place.unreadableSaid(), aboutFiles);
        GoesOut out = GoesOut.of(request, profile, pictures, rate, cut.length());
        FilmFormat goesOut = out.format();
        FilmFormat format = request.draft() ? FormatChooser.draft(profile, rate) : goesOut;
        remarks.addAll(request.draft() ? List.of() : out.remarks());
        PunchIn framing = framing(rules, pictures, goesOut);
        FilmCovers covers = FilmCovers.of(lesson);
        FilmPlan bare = FilmPlanner.plan(cut.pieces(), rate, framing, request.wishes());
        LostFiles lost = LostFiles.of(found, bare, cut.instead());
        remarks.addAll(lost.remarks());
        FilmPlan plan = bare.covered(CoverPlanner.place(covers.found(), bare, lesson));
        remarks.addAll(covers.remarks(plan));
        List<FilmObstacle> obstacles =
                FilmObstacles.of(plan, place.last(), filmed(cameras, found), lost, covers.troubles(), out.problem());
        FilmObstacles.room(plan, goesOut, FilmPlace.folder(request, place.last(), script))
                .ifPresent(obstacles::add);
        return new FilmPlanning(
                plan,
                sources,
                format,
                goesOut,
                lesson,
                script,
                HeardTake.of(plan, found),
                !cameras.isEmpty(),
                obstacles,
                framing.possible() ? Math.min(framing.step(), framing.most()) : PunchIn.FULL,
                leftOut,
                cut.marked(),
                remarks);
    }

    /**
     * A short text that is equal as long as the film would be the same: plan, lesson, kind of file, the files that it is made of as
     * they are now, and the program's version, as a newer one may make it better.
     */
    String fingerprint() throws ProblemException {
        StringBuilder all = new StringBuilder(plan.fingerprint(lesson))
                .append(format)
                .append(lesson.settings().language())
                .append(FilmPlanning.class.getPackage().getImplementationVersion());
        for (Path file : plan.files()) {
            try {
                all.append('\0').append(Files.size(file)).append('\0').append(Files.getLastModifiedTime(file));
            } catch (IOException e) {
                throw DiskProblems.reading(file, e);
            }
        }
        return Fingerprint.of(all.toString());
    }

    private static List<FilmFootage.Found> found(List<StoredSession> sessions, List<String> remarks)
            throws ProblemException {
        List<FilmFootage.Found> found = new ArrayList<>();
        for (StoredSession kept : sessions) {
            found.add(FilmFootage.of(kept, found.size(), remarks));
        }
        return found;
    }

    /** Whether a camera's file was matched, also one that cannot be used now. */
    private static boolean filmed(List<Camera> cameras, List<FilmFootage.Found> found) {
        return !cameras.isEmpty()
                || found.stream()
                        .flatMap(files -> files.lost().stream())
                        .anyMatch(file -> file.placed().footage().picture().isPresent());
    }

    private static Set<Integer> leftOut(Script lesson, List<StoredSession> sessions, Set<Integer> onlyNow) {
        Set<Integer> leftOut = new TreeSet<>(LessonLines.leftOut(
                lesson, sessions.stream().map(StoredSession::state).toList()));
        leftOut.addAll(onlyNow);
        return leftOut;
    }

    /** What is to be said about the lines of the cut, and of sessions and files. */
    private static List<String> remarks(
            Set<Integer> onlyNow, LessonCut cut, Script lesson, List<String> unreadable, List<String> aboutFiles) {
        List<String> remarks = new ArrayList<>();
        if (!onlyNow.isEmpty()) {
            remarks.add(Text.lines(List.copyOf(new TreeSet<>(onlyNow)))
                    + " left out of this film only: no session has it yet, so nothing was noted");
        }
        ChosenReadings.remark(cut.passedOver()).ifPresent(remarks::add);
        if (!Chapter.wanted(lesson)) {
            remarks.add(Chapter.NONE);
        }
        remarks.addAll(unreadable);
        remarks.addAll(aboutFiles);
        return remarks;
    }

    private static Optional<Path> file(Script lesson) {
        return Optional.of(Path.of(lesson.source()).toAbsolutePath().normalize())
                .filter(Files::isRegularFile);
    }

    private static FrameRate rate(Profile profile, List<Camera> cameras) throws ProblemException {
        return FormatChooser.rate(
                profile,
                cameras.stream()
                        .flatMap(c -> c.footage().picture().stream())
                        .map(p -> p.rate())
                        .findFirst()
                        .orElse(FrameRate.FPS_25));
    }

    private static Profile profile(FilmRequest request, Optional<Path> script, Environment here)
            throws ProblemException {
        Optional<Path> named = request.profile();
        Optional<Path> folder = script.flatMap(CourseReader::around);
        if (named.isEmpty() && folder.isPresent()) {
            named = CourseReader.readable(folder.get()).delivery();
        }
        return named.isPresent() ? DeliveryProfiles.read(named.get(), here) : DeliveryProfiles.usual(here);
    }

    /**
     * What the finished film is to be: a draft is framed as that will be.
     *
     * @param format the format; a draft's if the finished film cannot be made
     * @param remarks what a person should know of it, one sentence each
     * @param problem why it cannot be made, if so
     */
    private record GoesOut(FilmFormat format, List<String> remarks, Optional<ProblemException> problem) {
        static GoesOut of(
                FilmRequest request, Profile profile, List<PictureFacts> pictures, FrameRate rate, StreamTime length) {
            try {
                boolean enlarge = !request.draft() && request.enlarge();
                FormatChooser.Chosen chosen = FormatChooser.of(profile, pictures, rate, length, enlarge);
                return new GoesOut(chosen.format(), chosen.remarks(), Optional.empty());
            } catch (ProblemException e) {
                return new GoesOut(FormatChooser.draft(profile, rate), List.of(), Optional.of(e));
            }
        }
    }

    /** As close as each camera's picture allows without loss; a picture between bars stays as it is. */
    private static PunchIn framing(FilmRules rules, List<PictureFacts> pictures, FilmFormat format) {
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

    /** Where the author's own stills stand in the film. */
    List<Finding.Place> stills() {
        return plan.covers().stream()
                .filter(cover -> cover.shot().kind() == Shot.Kind.STILL)
                .map(cover -> new Finding.Place(
                        plan.rate().length(cover.from()), plan.rate().length(cover.to())))
                .toList();
    }

    /** What marks the lines that are used though they were not read clean, one sentence each. */
    List<String> sentences() {
        return marked.stream().map(LessonCut.Mark::sentence).toList();
    }
}
