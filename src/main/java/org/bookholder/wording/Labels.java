package org.bookholder.wording;

import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Outcome;
import org.bookholder.journal.SessionSummary;
import org.bookholder.pace.PaceBand;
import org.bookholder.session.Decision;
import org.bookholder.session.Person;
import org.bookholder.sound.Spoil;

/** One or a few words for each kind, the same on screen and in every file. */
public final class Labels {
    private Labels() {}

    /** The label of a line's or an attempt's outcome. */
    public static String of(Outcome outcome) {
        return switch (outcome) {
            case CLEAN -> "clean";
            case MISREAD -> "misread";
            case INCOMPLETE -> "incomplete";
            case SKIPPED -> "skipped";
            case NOT_JUDGED -> "not judged";
        };
    }

    /** The label of a kind of deviation. */
    public static String of(Deviation.Kind kind) {
        return switch (kind) {
            case SWAPPED -> "swapped";
            case DROPPED -> "dropped";
            case ADDED -> "added";
        };
    }

    /** The label of a pace compared with its target. */
    public static String of(PaceBand band) {
        return switch (band) {
            case UNKNOWN -> "unknown";
            case SLOW -> "slow";
            case ON_PACE -> "on pace";
            case FAST -> "fast";
        };
    }

    /** The label of a decision about a line. */
    public static String of(Decision.Choice choice) {
        return switch (choice) {
            case RECORD_AGAIN -> "record again";
            case KEEP -> "keep";
            case FIX_IN_EDIT -> "fix in the edit";
            case NOT_A_FAULT -> "not a fault";
            case LEAVE_OUT -> "left out on purpose";
        };
    }

    /** The label of a person. */
    public static String of(Person person) {
        return switch (person) {
            case PRESENTER -> "presenter";
            case PRODUCER -> "producer";
        };
    }

    /** The label of a kind of spoiled sound. Sessions store it as the note of a mark, so it must not change. */
    public static String of(Spoil.Kind kind) {
        return switch (kind) {
            case CLIPPED -> "sound clipped";
            case NOISY -> "sound too noisy";
            case DROPOUT -> "sound dropped out";
            case NOT_SAVED -> "sound not saved";
        };
    }

    /** The label of how a session was left. */
    public static String of(SessionSummary.Standing standing) {
        return switch (standing) {
            case FINISHED -> "finished";
            case BROKEN_OFF -> "broken off";
            case EMPTY -> "empty";
            case OPEN -> "open";
            case UNREADABLE -> "unreadable";
        };
    }
}
