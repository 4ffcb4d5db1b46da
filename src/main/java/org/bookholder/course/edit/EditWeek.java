package org.bookholder.course.edit;

import java.time.LocalDate;
import java.util.List;

/**
 * A week of editing.
 *
 * @param begins its first day
 * @param finished the lessons that are finished in it
 * @param begun the lesson that is started in it but not finished; empty if there is none
 * @param hours hours for editing
 * @param slack hours kept free for revisions and retakes
 */
public record EditWeek(LocalDate begins, List<String> finished, String begun, double hours, double slack) {
    /** Copies the list. */
    public EditWeek {
        finished = List.copyOf(finished);
    }

    /** Whether there is nothing to edit yet. */
    public boolean idle() {
        return finished.isEmpty() && begun.isEmpty();
    }
}
