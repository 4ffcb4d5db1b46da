package org.bookholder.app.home;

import java.util.List;
import org.bookholder.course.ExportCheck;
import org.bookholder.course.board.LessonState;

/** How far a lesson has come on its way out: six steps, each from 0 to 1. */
final class LessonSteps {
    /** What the steps are called, in order. */
    static final List<String> NAMES = List.of("written", "recorded", "picked up", "edited", "exported", "checked");

    private LessonSteps() {}

    static List<Double> of(LessonState state) {
        double lines = state.recording().lines();
        double recorded = (lines - state.recording().unread().size()) / lines;
        double pickedUp = !state.recording().unread().isEmpty()
                ? 0
                : (lines - state.recording().pickups().size()) / lines;
        boolean exported = state.export().isPresent();
        boolean checked = exported && state.check().filter(ExportCheck::passed).isPresent();
        return List.of(
                1.0,
                recorded,
                pickedUp,
                state.edited().isPresent() ? 1.0 : 0.0,
                exported ? 1.0 : 0.0,
                checked ? 1.0 : 0.0);
    }
}
