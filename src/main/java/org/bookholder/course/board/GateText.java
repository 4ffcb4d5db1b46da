package org.bookholder.course.board;

import org.bookholder.course.Text;

/** What is said of whether a course may go out; the same in the terminal, on the pages and in print. */
public final class GateText {
    /** What to do about a fact that is not right any more, or may become outdated again. */
    public static final String OUTDATED = "Not right any more? Change the line in its script: it is then to be recorded"
            + " again. To be reminded again, write a new date behind check: in the script.";

    private GateText() {}

    /** The verdict. */
    public static String headline(Board board) {
        return board.finished() ? "Finished: every lesson can go out" : "Finished? Not yet";
    }

    /** Why, in a sentence or two. */
    public static String standing(Board board) {
        if (board.finished()) {
            return "Every lesson is recorded, has no pickups left, and is edited, exported and checked."
                    + " No fact in it waits for a look.";
        }
        int unreadable = board.course().unreadable().size();
        long open = board.lessons().stream()
                        .filter(state -> !state.missing().isEmpty())
                        .count()
                + unreadable;
        int facts = board.due().size();
        String lessons = open == 0
                ? ""
                : Text.count(open, "lesson") + " of " + (board.lessons().size() + unreadable)
                        + (open == 1 ? " needs" : " need") + " something before the course can go out. ";
        String due = facts == 0
                ? ""
                : Text.count(facts, "fact") + " may be outdated and " + (facts == 1 ? "needs" : "need") + " a look.";
        return (lessons + due).strip();
    }

    /** What not to do before the course is finished; empty once it is. */
    public static String caution(Board board) {
        return board.finished() ? "" : "Don't promise a date until nothing is missing.";
    }

    /** The files that hold a fact. */
    public static String holding(DueFact fact) {
        return fact.files().isEmpty() ? "Not exported yet." : "Said in " + String.join(", ", fact.files()) + ".";
    }
}
