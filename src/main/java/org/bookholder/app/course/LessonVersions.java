package org.bookholder.app.course;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.StoredSession;
import org.bookholder.course.Course;
import org.bookholder.course.EditingProgress;
import org.bookholder.course.ExportChecks;
import org.bookholder.course.ExportFiles;
import org.bookholder.course.FactChecks;
import org.bookholder.course.FormerNames;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.versions.LessonHistory;
import org.bookholder.course.versions.LessonHistory.Kind;
import org.bookholder.course.versions.LessonHistory.Moment;
import org.bookholder.course.versions.ReadText;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/** Tells what became of a lesson: the texts that were read, recordings, edits, films and checks. */
public final class LessonVersions {
    private final Environment here;
    private final Course course;
    private final Lesson lesson;
    private final List<RecordedSession> sessions;
    private final FormerNames names;

    private LessonVersions(Environment here, Course course, Lesson lesson, List<RecordedSession> sessions) {
        this.here = here;
        this.course = course;
        this.lesson = lesson;
        this.sessions = sessions;
        this.names = FormerNames.of(course, Map.of(lesson, sessions));
    }

    /**
     * The history of the lesson in a file.
     *
     * @throws ProblemException if its course does not have it, or something cannot be read
     */
    public static LessonHistory of(Path file, Environment here) throws ProblemException {
        LessonSessions found = LessonSessions.of(file, here)
                .orElseThrow(() -> new ProblemException(
                        "this is no lesson of the course around it", file.toString(), "name a lesson's script"));
        return of(here, found.course(), found.lesson(), found.sessions());
    }

    /**
     * The history of a lesson.
     *
     * @param sessions its sessions
     * @throws ProblemException if one of its sessions or of its files cannot be read
     */
    public static LessonHistory of(Environment here, Course course, Lesson lesson, List<RecordedSession> sessions)
            throws ProblemException {
        return new LessonVersions(here, course, lesson, sessions).history();
    }

    private LessonHistory history() throws ProblemException {
        List<ReadText> texts = new ArrayList<>();
        List<Moment> moments = new ArrayList<>(marks());
        moments.addAll(films(course.exports()));
        for (RecordedSession session : sessions) {
            try (StoredSession kept = StoredSession.open(here, session.folder())) {
                texts.addAll(texts(kept.events()));
            }
            moments.addAll(films(session.folder().resolve("film")));
        }
        return LessonHistory.of(lesson, ExportFiles.made(lesson.file()), texts, sessions, moments);
    }

    /** The texts with which a session was opened, and those to which they were changed while it ran. */
    private static List<ReadText> texts(List<SessionEvent> events) throws ProblemException {
        List<ReadText> texts = new ArrayList<>();
        Instant clock = Instant.EPOCH;
        StreamTime from = StreamTime.ZERO;
        String source = "";
        for (SessionEvent event : events) {
            if (event instanceof SessionEvent.Opened opened) {
                clock = opened.when();
                from = opened.at();
                source = opened.source();
                texts.add(new ReadText(clock, opened.script()));
            } else if (event instanceof SessionEvent.TakeStarted started) {
                clock = started.when();
                from = started.at();
            } else if (event instanceof SessionEvent.TextChanged changed) {
                Instant when = clock.plus(changed.at().since(from).toDuration());
                texts.add(new ReadText(when, changed.script(source)));
            }
        }
        return texts;
    }

    /** What people have marked. */
    private List<Moment> marks() throws ProblemException {
        List<Moment> moments = new ArrayList<>();
        for (EditingProgress.Mark mark :
                EditingProgress.read(course.folder()).renamed(names).marks(lesson)) {
            String hours = mark.hours() > 0 ? String.format(Locale.ROOT, " in %.1f hours", mark.hours()) : "";
            moments.add(new Moment(
                    Instant.parse(mark.when()),
                    Kind.EDIT,
                    mark.kind() == EditingProgress.Kind.EDITED
                            ? "Marked as edited" + hours
                            : "Marked as not edited after all"));
        }
        for (FactChecks.Decision decision : FactChecks.read(course.folder()).decisions(lesson)) {
            moments.add(new Moment(
                    Instant.parse(decision.when()),
                    Kind.FACT,
                    "\u201c" + decision.fact() + "\u201d "
                            + (decision.right()
                                    ? "was looked at and is still right"
                                    : "is to be looked at after all")));
        }
        return moments;
    }

    /** The films of the lesson in a folder, and their checks. */
    private List<Moment> films(Path folder) throws ProblemException {
        List<Moment> moments = new ArrayList<>();
        for (Path film : ExportFiles.in(folder, this::isFilm)) {
            moments.add(new Moment(ExportFiles.made(film), Kind.FILM, "Film " + film.getFileName()));
            ExportChecks.read(course.folder(), film)
                    .ifPresent(check -> moments.add(new Moment(
                            check.checked(),
                            Kind.CHECK,
                            film.getFileName() + ": "
                                    + (check.passed() ? "nothing was found" : String.join("; ", check.findings())))));
        }
        return moments;
    }

    private boolean isFilm(Path file) {
        return ExportFiles.isFilm(file)
                && names.lessonOf(file).filter(lesson::equals).isPresent();
    }
}
