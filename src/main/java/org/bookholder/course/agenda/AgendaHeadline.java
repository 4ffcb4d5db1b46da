package org.bookholder.course.agenda;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Text;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonStage;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.RecordingTask;

/** What a day is for, in a sentence or two. */
final class AgendaHeadline {
    private final AgendaBasis basis;
    private final Board board;

    private AgendaHeadline(AgendaBasis basis) {
        this.basis = basis;
        this.board = basis.board();
    }

    /**
     * The headline.
     *
     * @param anything whether there is anything to do
     */
    static String of(AgendaBasis basis, boolean anything) {
        return new AgendaHeadline(basis).text(anything);
    }

    private String text(boolean anything) {
        List<LessonState> toRead = basis.toRead();
        if (board.finished()) {
            return "Nothing is left to do: every lesson can go out." + (anything ? " See what the launch lacks." : "");
        }
        if (!toRead.isEmpty()) {
            return today(toRead);
        }
        if (basis.works().works().isEmpty()) {
            return recorded();
        }
        String rest = anything ? "" : " Nothing else waits today; you can read ahead.";
        Optional<PlannedSession> next = basis.next();
        return next.isPresent()
                ? "Nothing is to be recorded today. The next recording day is "
                        + next.get().date().orElseThrow() + ": " + lessons(next.get()) + " ("
                        + Text.hours(next.get().reading()) + " before the camera)." + rest
                : "Nothing can be recorded by the plan: "
                        + (allOver() ? "all recording days are over" : "no recording day has room") + ", and "
                        + lessonsLeft() + " (" + Text.hours(basis.camera(left())) + " before the camera).";
    }

    private String lessonsLeft() {
        int count = left().size();
        return Text.count(count, "lesson") + (count == 1 ? " is" : " are") + " still to record";
    }

    private List<LessonState> left() {
        return board.lessons().stream()
                .filter(state -> !state.recording().complete())
                .toList();
    }

    private boolean allOver() {
        return board.course().shooting().days().stream()
                .allMatch(day -> day.date().isBefore(basis.today()));
    }

    private String today(List<LessonState> toRead) {
        Optional<PlannedSession> session = basis.session();
        String camera = Text.hours(basis.camera(toRead)) + " before the camera";
        String what = what(toRead) + " (" + camera;
        if (session.isEmpty()) {
            return "Today: " + what + ").";
        }
        return session.get().date().isEmpty()
                ? "No recording day is chosen yet, so any day may be one. Today you could " + what + ")."
                : "Today: " + what
                        + (basis.order().own() ? ")." : "; with set-up and breaks from " + times(session.get()) + ").");
    }

    private static String times(PlannedSession session) {
        return session.from() + " to " + session.from().plus(session.length());
    }

    /** For example "record 3 lessons and pick up lines in 1". */
    private static String what(List<LessonState> toRead) {
        long pickups = toRead.stream()
                .filter(state -> state.stage() == LessonStage.PICKUPS)
                .count();
        long whole = toRead.size() - pickups;
        List<String> what = new ArrayList<>();
        if (whole > 0) {
            what.add("record " + Text.count(whole, "lesson"));
        }
        if (pickups > 0) {
            what.add("pick up lines in " + (whole > 0 ? String.valueOf(pickups) : Text.count(pickups, "lesson")));
        }
        return String.join(" and ", what);
    }

    private static String lessons(PlannedSession session) {
        return Text.count(
                session.works().stream().map(RecordingTask::lesson).distinct().count(), "lesson");
    }

    /** All that can be read is recorded. */
    private String recorded() {
        int unwritten = board.course().unreadable().size();
        List<String> left = new ArrayList<>();
        left(left, LessonStage.RECORDED, "to edit");
        left(left, LessonStage.EDITED, "to export");
        left(left, LessonStage.EXPORTED, "to check");
        int facts = board.due().size();
        if (facts > 0) {
            left.add(Text.count(facts, "fact") + " to look at");
        }
        return (unwritten > 0
                        ? "All that is written is recorded; " + Text.count(unwritten, "lesson")
                                + " can\u2019t be read yet."
                        : "Everything is recorded.")
                + (left.isEmpty() ? "" : " Still open: " + String.join(", ", left) + ".");
    }

    private void left(List<String> left, LessonStage stage, String what) {
        long count =
                board.lessons().stream().filter(state -> state.stage() == stage).count();
        if (count > 0) {
            left.add(Text.count(count, "lesson") + " " + what);
        }
    }
}
