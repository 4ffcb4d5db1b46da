package org.bookholder.course.board;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bookholder.course.Course;
import org.bookholder.course.EditingProgress;
import org.bookholder.course.ExportChecks;
import org.bookholder.course.ExportFiles;
import org.bookholder.course.FormerNames;
import org.bookholder.course.Lesson;
import org.bookholder.course.Measured;
import org.bookholder.course.RecordedSession;
import org.bookholder.pace.RunningTime;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;

/** Works out the state of a course from the files in its folder and from its sessions. */
public final class BoardReader {
    private final Course course;
    private final Map<Lesson, List<RecordedSession>> sessions;
    private final Measured measured;
    private final EditingProgress progress;
    private final List<Export> exports;
    private final FormerNames names;

    /** An exported file and when it was last changed. */
    private record Export(Path file, Instant made) {}

    private BoardReader(
            Course course, Map<Lesson, List<RecordedSession>> sessions, Measured measured, List<Export> exports)
            throws ProblemException {
        this.course = course;
        this.sessions = sessions;
        this.measured = measured;
        this.exports = exports;
        names = FormerNames.of(course, sessions);
        progress = EditingProgress.read(course.folder()).renamed(names);
    }

    /**
     * The state of the course, without planned recording days.
     *
     * @param sessions the sessions of each lesson
     * @param today the day to which the state applies
     * @throws ProblemException if exports, notes of checks or marks cannot be read
     */
    public static Board read(Course course, Map<Lesson, List<RecordedSession>> sessions, LocalDate today)
            throws ProblemException {
        Measured measured =
                Measured.of(sessions.values().stream().flatMap(List::stream).toList());
        BoardReader reader = new BoardReader(course, sessions, measured, exports(course.exports()));
        List<LessonState> states = new ArrayList<>();
        for (Lesson lesson : course.lessons()) {
            states.add(reader.state(lesson));
        }
        return new Board(course, measured, states, FactReader.facts(course, reader.names, states), today);
    }

    private LessonState state(Lesson lesson) throws ProblemException {
        Recording recording = Recording.of(lesson.script(), sessions.getOrDefault(lesson, List.of()));
        List<Export> own = exports.stream()
                .filter(e -> names.lessonOf(e.file()).filter(lesson::equals).isPresent())
                .toList();
        Optional<Export> export = own.stream()
                .findFirst()
                .filter(e -> recording.last().isEmpty()
                        || !e.made().isBefore(recording.last().get()));
        Optional<EditingProgress.Edited> marked = progress.edited(lesson)
                .filter(e -> recording.last().isEmpty()
                        || !e.when().isBefore(recording.last().get()));
        Script script = lesson.script();
        double pace = measured.likelyPace(script.settings().targetPace());
        return new LessonState(
                lesson,
                RunningTime.of(script.spokenWords(), pace).seconds(),
                recording,
                Optional.empty(),
                marked.map(EditingProgress.Edited::when).or(() -> export.map(Export::made)),
                marked.filter(e -> e.hours() > 0)
                        .map(e -> OptionalDouble.of(e.hours()))
                        .orElse(OptionalDouble.empty()),
                isDrafted(lesson, recording),
                own.stream().map(Export::file).toList(),
                export.map(Export::file),
                export.isPresent()
                        ? ExportChecks.read(course.folder(), export.get().file())
                        : Optional.empty());
    }

    /** Whether one of its sessions holds a film or a draft that the program made after the last recording. */
    private boolean isDrafted(Lesson lesson, Recording recording) throws ProblemException {
        for (RecordedSession session : sessions.getOrDefault(lesson, List.of())) {
            for (String shelf : List.of("film", "film/draft-of-lesson", "film/draft-of-session")) {
                boolean newer = exports(session.folder().resolve(shelf)).stream()
                        .anyMatch(film -> recording.last().isPresent()
                                && !film.made().isBefore(recording.last().get()));
                if (newer) {
                    return true;
                }
            }
        }
        return false;
    }

    /** The exported files, the newest first. */
    private static List<Export> exports(Path folder) throws ProblemException {
        List<Export> found = new ArrayList<>();
        for (Path file : ExportFiles.in(folder, ExportFiles::isFilm)) {
            found.add(new Export(file, ExportFiles.made(file)));
        }
        found.sort(Comparator.comparing(Export::made).reversed().thenComparing(Export::file));
        return found;
    }
}
