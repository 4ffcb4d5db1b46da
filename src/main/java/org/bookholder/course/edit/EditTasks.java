package org.bookholder.course.edit;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Editing;
import org.bookholder.course.LessonKind;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonState;

/** The edits that a course asks for. */
public final class EditTasks {
    private static final double SECONDS_PER_MINUTE = 60;

    private EditTasks() {}

    /** One for each lesson, in order. */
    public static List<EditTask> of(Board board, ZoneId zone) {
        OwnHours own = OwnHours.of(board);
        return board.lessons().stream()
                .map(state -> task(board, state, own, zone))
                .toList();
    }

    private static EditTask task(Board board, LessonState state, OwnHours own, ZoneId zone) {
        double minutes = state.seconds() / SECONDS_PER_MINUTE;
        LessonKind kind = state.lesson().kind();
        double hours = board.course().editing().hours(kind, minutes);
        boolean done = state.edited().isPresent();
        boolean recorded = done || state.recording().complete();
        boolean dated = !board.course().shooting().days().isEmpty();
        return new EditTask(
                state.lesson().name(),
                minutes,
                hours,
                done ? 0 : state.drafted() ? minutes * Editing.LOOKING_THROUGH : own.of(kind, hours),
                state.edited().map(when -> LocalDate.ofInstant(when, zone)),
                state.editHours(),
                !recorded && dated && state.planned().isEmpty(),
                recorded ? Optional.empty() : state.planned());
    }
}
