package org.bookholder.course.agenda;

import java.util.List;

/**
 * Something to do today.
 *
 * @param kind what kind of work it is
 * @param lesson the name of the lesson that it is about; empty if it is about none or several
 * @param text what to do, without a full stop; lessons by their titles, days as yyyy-mm-dd
 * @param why why this, and why today, one phrase each; may be empty
 */
public record AgendaItem(Kind kind, String lesson, String text, List<String> why) {
    /** Copies the list. */
    public AgendaItem {
        why = List.copyOf(why);
    }

    /** A kind of work. */
    public enum Kind {
        /** A fact to look at. */
        FACT,
        /** Something to read to the camera. */
        READ,
        /** A film to edit, export or check. */
        FILM,
        /** A script to write or to mend. */
        SCRIPT,
        /** Something of the plan itself to decide. */
        PLAN,
        /** What belongs to the launch. */
        LAUNCH
    }
}
