package org.bookholder.course.edit;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Editing;

/** How a day on which the course was hoped to go out stands against the forecast of its edit. */
public enum LaunchDay {
    /** It has passed, and nothing is forecast. */
    OVER,
    /** The edit is done before it. */
    IN_TIME,
    /** The edit is not done by then. */
    LATE;

    /** How a day stands; empty if nothing can be said yet. */
    public static Optional<LaunchDay> of(LocalDate hoped, List<EditTask> tasks, Editing editing, LocalDate today) {
        BurnDown burnDown = BurnDown.of(tasks, editing, today);
        if (burnDown.forecast().isEmpty()) {
            return hoped.isBefore(today) ? Optional.of(OVER) : Optional.empty();
        }
        return Optional.of(burnDown.forecast().get().isBefore(hoped) ? IN_TIME : LATE);
    }
}
