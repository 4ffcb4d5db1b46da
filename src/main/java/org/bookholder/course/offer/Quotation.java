package org.bookholder.course.offer;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.bookholder.course.Editing;
import org.bookholder.course.QuotationTerms;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.Text;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.edit.EditTask;
import org.bookholder.course.edit.EditTasks;
import org.bookholder.course.shoot.RecordingBacklog;
import org.bookholder.course.shoot.SessionPlan;

/**
 * Hours and a price for making the whole course, whatever is done of it already: the plan's own figures, at a person's rate. Hours are
 * rounded to tenths, and amounts are of the rounded hours, so that the page adds up.
 *
 * @param terms what a person has written down for it
 * @param lessons how many lessons the course has
 * @param minutes their finished minutes
 * @param rows the hours, one row for each kind of work; none of no hours
 * @param remarks what the reader should know of the figures, one sentence or two each
 */
public record Quotation(QuotationTerms terms, int lessons, double minutes, List<Row> rows, List<String> remarks) {
    /** What stands on every quotation. */
    public static final String NO_ADVICE =
            "This is no legal or tax advice: what a quotation has to say, and to what it binds you, depends on where"
                    + " you work; ask somebody who knows. The hours are estimates, and taxes are not in these figures.";

    private static final double MINUTES = 60;
    private static final int TENTHS = 10;

    /** Each film is watched once to its end before it goes out (common practice). */
    private static final double WATCHING = 1 / MINUTES;

    /** Copies the lists. */
    public Quotation {
        rows = List.copyOf(rows);
        remarks = List.copyOf(remarks);
    }

    /**
     * A kind of work.
     *
     * @param what its name
     * @param hours how many hours it takes, in tenths
     * @param from where they come from
     */
    public record Row(String what, double hours, String from) {}

    /**
     * A quotation for a course.
     *
     * @param plan the sessions that are left
     * @param sessions what was recorded so far
     */
    public static Quotation of(
            Board board,
            RecordingBacklog works,
            SessionPlan plan,
            Collection<RecordedSession> sessions,
            QuotationTerms terms,
            ZoneId zone) {
        List<Row> rows = new ArrayList<>();
        double minutes =
                board.lessons().stream().mapToDouble(LessonState::seconds).sum() / MINUTES;
        Duration setUp = board.course().shooting().setUp();
        int recorded = daysRecorded(sessions, zone);
        // What is still to be recorded on a day on which something was recorded needs no other set-up.
        int planned = (int) plan.sessions().stream()
                .filter(session -> session.date()
                        .filter(day -> recordedOn(sessions, day, zone))
                        .isEmpty())
                .count();
        add(
                rows,
                "Setting up",
                (recorded + planned) * setUp.toMinutes() / MINUTES,
                sessions(recorded, planned) + ", " + Text.hours(setUp) + " each");
        add(
                rows,
                "Reading before the camera",
                minutes * works.ratio() / MINUTES,
                String.format(
                        Locale.ROOT,
                        "%.2f recorded minutes for each finished one (%s)",
                        works.ratio(),
                        works.ratioFrom()));
        edit(rows, board, terms, zone);
        add(rows, terms.moreFor().isEmpty() ? "Other work" : terms.moreFor(), terms.more(), "as agreed");
        return new Quotation(terms, board.lessons().size(), minutes, rows, remarks(board, plan));
    }

    /** How many sessions there are in all; where some are over, how many of them, as the plan counts only the others. */
    private static String sessions(int recorded, int planned) {
        String all = Text.count(recorded + (long) planned, "session");
        return recorded == 0 || planned == 0 ? all : all + " (" + recorded + " recorded, " + planned + " to come)";
    }

    private static boolean recordedOn(Collection<RecordedSession> sessions, LocalDate day, ZoneId zone) {
        return sessions.stream()
                .anyMatch(session -> LocalDate.ofInstant(session.began(), zone).equals(day));
    }

    private static int daysRecorded(Collection<RecordedSession> sessions, ZoneId zone) {
        return (int) sessions.stream()
                .map(RecordedSession::began)
                .map((Instant when) -> LocalDate.ofInstant(when, zone))
                .distinct()
                .count();
    }

    private static void edit(List<Row> rows, Board board, QuotationTerms terms, ZoneId zone) {
        double editing = 0;
        double looking = 0;
        double watching = 0;
        List<EditTask> tasks = EditTasks.of(board, zone);
        for (int i = 0; i < tasks.size(); i++) {
            EditTask task = tasks.get(i);
            boolean done = task.done().isPresent();
            if (!done && (terms.filmsMade() || board.lessons().get(i).drafted())) {
                looking += task.minutes() * Editing.LOOKING_THROUGH;
            } else {
                editing += done ? task.took().orElse(task.hours()) : task.left();
                watching += task.minutes() * WATCHING;
            }
        }
        add(rows, "Editing", editing, "by the kind of each lesson, and your own hours where they are known");
        add(rows, "Looking through films made by Bookholder", looking, "2 minutes for each minute (trade practice)");
        add(rows, "Watching each finished film once", watching, "to its end, before it goes out (common practice)");
    }

    private static void add(List<Row> rows, String what, double hours, String from) {
        double tenths = Math.round(hours * TENTHS) / (double) TENTHS;
        if (hours > 0) {
            rows.add(new Row(what, Math.max(1.0 / TENTHS, tenths), from));
        }
    }

    private static List<String> remarks(Board board, SessionPlan plan) {
        List<String> remarks = new ArrayList<>();
        remarks.add("Breaks are not counted as work.");
        if (!plan.left().isEmpty()) {
            remarks.add(Text.count(plan.left().size(), "lesson")
                    + (plan.left().size() == 1 ? " has" : " have")
                    + " no recording day yet; setting up for that is not counted.");
        }
        if (!board.course().unreadable().isEmpty()) {
            remarks.add(Text.count(board.course().unreadable().size(), "lesson")
                    + " can\u2019t be read yet and is not in these figures.");
        }
        return remarks;
    }

    /** All hours. */
    public double hours() {
        return rows.stream().mapToDouble(Row::hours).sum();
    }

    /** What the hours cost; empty without a rate. */
    public OptionalDouble work() {
        return terms.rate().isPresent()
                ? OptionalDouble.of(hours() * terms.rate().getAsDouble())
                : OptionalDouble.empty();
    }

    /** The whole price; empty without a rate. */
    public OptionalDouble price() {
        return work().isPresent() ? OptionalDouble.of(work().getAsDouble() + terms.expenses()) : OptionalDouble.empty();
    }

    /** An amount of money with its currency. */
    public String money(double amount) {
        return (String.format(Locale.ROOT, "%,.2f", amount) + " " + terms.currency()).strip();
    }
}
