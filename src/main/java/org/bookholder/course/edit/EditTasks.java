package org.bookholder.course.edit;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonState;

/** The edits that a course asks for. */
public final class EditTasks {
    private static final double SECONDS_PER_MINUTE = 60;

    private EditTasks() {}

    /** One for each lesson, in order. */
    public static List<EditTask> of(Board board, ZoneId zone) {
        return board.lessons().stream().map(state -> task(board, state, zone)).toList();
    }

    private static EditTask task(Board board, LessonState state, ZoneId zone) {
        double minutes = state.seconds() / SECONDS_PER_MINUTE;
        return new EditTask(
                state.lesson().name(),
                minutes,
                board.course().editing().hours(state.lesson().kind(), minutes),
                state.edited().map(when -> LocalDate.ofInstant(when, zone)),
                state.editHours(),
                state.edited().isPresent() || state.recording().complete() ? Optional.empty() : state.planned());
    }
}
