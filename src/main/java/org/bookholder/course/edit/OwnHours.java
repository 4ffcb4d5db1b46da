package org.bookholder.course.edit;

import java.util.EnumMap;
import java.util.Map;
import org.bookholder.course.Editing;
import org.bookholder.course.LessonKind;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonState;

/**
 * How the hours that this course's edits really took compare with what was estimated, for each kind of lesson. The estimate counts as much as
 * one lesson of its kind (our choice): after the first own lesson half, after the ninth a tenth.
 *
 * @param factors by how much the estimate of a kind is to be multiplied
 */
record OwnHours(Map<LessonKind, Double> factors) {
    private static final double SECONDS_PER_MINUTE = 60;

    /** Copies the map. */
    OwnHours {
        factors = Map.copyOf(factors);
    }

    /** Compares the edits of which somebody has told how long they took. */
    static OwnHours of(Board board) {
        Editing editing = board.course().editing();
        Map<LessonKind, Double> factors = new EnumMap<>(LessonKind.class);
        for (LessonKind kind : LessonKind.values()) {
            double prior = editing.hours(kind, LessonKind.SHORT_MINUTES);
            double estimated = prior;
            double took = prior;
            for (LessonState state : board.lessons()) {
                if (state.lesson().kind() == kind && state.editHours().isPresent()) {
                    estimated += editing.hours(kind, state.seconds() / SECONDS_PER_MINUTE);
                    took += state.editHours().getAsDouble();
                }
            }
            factors.put(kind, took / estimated);
        }
        return new OwnHours(factors);
    }

    /** Hours for a lesson of that kind, of which this many are estimated. */
    double of(LessonKind kind, double estimated) {
        return estimated * factors.getOrDefault(kind, 1.0);
    }
}
