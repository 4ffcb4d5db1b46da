package org.bookholder.app.course;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.day.DayService;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.InterruptedSession;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.app.session.SessionFolders;
import org.bookholder.app.session.SessionSettler;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.SameLines;
import org.bookholder.course.board.LessonState;
import org.bookholder.follow.model.Outcome;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionState;

/**
 * Where a lesson goes on of which lines were never read.
 *
 * @param session the session that goes on in a new take; empty for a new one
 * @param from the line to begin at; empty for the first one, or where the session was left
 */
public record ReadingOn(Optional<Path> session, Optional<Integer> from) {
    /** Nothing goes on: a session of its own, from the first line. */
    public static final ReadingOn NOWHERE = new ReadingOn(Optional.empty(), Optional.empty());

    /**
     * Goes on in the lesson's last session if the presenter has read in it to a microphone here, it ended within the last hours, is of
     * the same text, and is not open in another process. It goes on at the line in which that session ended, if this is still to be
     * read and comes first, otherwise at the first line that nobody has read. Where one goes on that has still to be listened to is known
     * only then.
     *
     * @throws ProblemException if the lesson's script cannot be read
     */
    public static ReadingOn of(CourseOverview course, LessonState state, Environment here) throws ProblemException {
        return of(course, state, DayService.SOLE_PRESENTER, here);
    }

    /** The same for a presenter of several. */
    static ReadingOn of(CourseOverview course, LessonState state, String presenter, Environment here)
            throws ProblemException {
        List<Integer> unread = state.recording().unread();
        if (unread.isEmpty()) {
            return NOWHERE;
        }
        ScriptFile text = ScriptFile.read(state.lesson().file(), List.of());
        List<Path> own = new DayService(here, presenter).sessions();
        Optional<RecordedSession> last = course.newest(state.lesson())
                .filter(session ->
                        own.contains(session.folder().toAbsolutePath().normalize())
                                && SessionFolders.isOfToday(session.ended(), here)
                                && InterruptedSession.isOfText(session.folder(), text)
                                && !SessionFolder.isOpenElsewhere(session.folder(), here.locks()));
        if (last.isPresent()
                && !SessionSettler.unsettled(here, last.get().folder()).isEmpty()) {
            return new ReadingOn(last.map(RecordedSession::folder), Optional.empty());
        }
        int first = unread.get(0);
        int from = last.flatMap(session -> brokenOff(session.state(), state.lesson()))
                .filter(line -> line < first && state.recording().pickups().contains(line))
                .orElse(first);
        return new ReadingOn(
                last.map(RecordedSession::folder), state.recording().begun() ? Optional.of(from) : Optional.empty());
    }

    /** A session of its own, at the first line that nobody has read. */
    public static ReadingOn anew(LessonState state) {
        List<Integer> unread = state.recording().unread();
        return new ReadingOn(
                Optional.empty(), state.recording().begun() ? unread.stream().findFirst() : Optional.empty());
    }

    /** The lesson's number of the line in which a session ended, if it was not read to its end. */
    private static Optional<Integer> brokenOff(SessionState state, Lesson lesson) {
        int line = state.following().position().line();
        boolean broken =
                line <= state.lines().count() && state.lines().notes(line).outcome() == Outcome.INCOMPLETE;
        Map<Integer, Integer> numbers = broken ? SameLines.numbers(state.script(), lesson.script()) : Map.of();
        return Optional.ofNullable(numbers.get(line));
    }
}
