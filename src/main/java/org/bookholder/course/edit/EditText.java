package org.bookholder.course.edit;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.bookholder.course.Costs;
import org.bookholder.course.Editing;
import org.bookholder.course.EditingRate;
import org.bookholder.course.LessonKind;
import org.bookholder.course.Text;

/** Weeks of editing as a text for a terminal of 80 columns. */
public final class EditText {
    private static final int LESSONS = 46;
    private static final int MOST_BARS = 40;

    private EditText() {}

    /** Plan, burn-down and forecast, line by line. */
    public static List<String> of(List<EditTask> tasks, Editing editing, LocalDate today) {
        List<String> out = new ArrayList<>();
        out.addAll(Text.wrap(amount(tasks)));
        BurnDown burnDown = BurnDown.of(tasks, editing, today);
        EditPlan plan = EditPlan.of(tasks, editing, burnDown.from(), 1);
        out.add(String.format(
                Locale.ROOT, "%-11s %s %6s %6s", "week of", Text.fit("finished", LESSONS), "hours", "slack"));
        out.addAll(rows(plan));
        String waiting = waiting(tasks, name -> name);
        if (!waiting.isEmpty()) {
            out.addAll(Text.wrap(waiting));
        }
        out.addAll(Text.wrap(sanity(plan.weeks().size())));
        out.addAll(Text.wrap(sources(editing, tasks)));
        out.add("");
        out.addAll(burnDown(burnDown, tasks.size()));
        out.addAll(Text.wrap(forecast(burnDown, plan)));
        return out;
    }

    /** How much there is still to edit. */
    public static String amount(List<EditTask> tasks) {
        List<EditTask> open =
                tasks.stream().filter(task -> task.done().isEmpty()).toList();
        if (open.isEmpty()) {
            return "Every lesson is edited.";
        }
        double minutes = open.stream().mapToDouble(EditTask::minutes).sum();
        return String.format(
                Locale.ROOT,
                "To edit: %s, which %s %s in all. That takes about %.0f hours of work.",
                open.size() == tasks.size()
                        ? Text.count(open.size(), "lesson")
                        : open.size() + " of " + Text.count(tasks.size(), "lesson"),
                open.size() == 1 ? "runs" : "run",
                Text.hours(Duration.ofSeconds(Math.round(minutes * 60))),
                Math.max(1, open.stream().mapToDouble(EditTask::left).sum()));
    }

    /** Which lessons stand in no week, because nobody knows when they are recorded; empty if there are none. */
    public static String waiting(List<EditTask> tasks, UnaryOperator<String> titles) {
        List<String> names = tasks.stream()
                .filter(EditTask::waits)
                .map(EditTask::name)
                .map(titles)
                .toList();
        return names.isEmpty()
                ? ""
                : "In none of these weeks, because " + (names.size() == 1 ? "it has" : "they have")
                        + " no recording day yet: " + String.join(", ", names) + ".";
    }

    /** A row for each week; one for weeks that pass until something is recorded. */
    private static List<String> rows(EditPlan plan) {
        List<EditWeek> weeks = plan.weeks();
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < weeks.size(); i++) {
            int first = i;
            while (i < weeks.size() - 1
                    && weeks.get(first).idle()
                    && weeks.get(i + 1).idle()) {
                i++;
            }
            int idle = i - first + 1;
            String waiting = "(waits for the recording" + (idle > 1 ? ", " + idle + " weeks" : "") + ")";
            rows.addAll(row(weeks.get(first), waiting, plan.finishesRest(first)));
        }
        return rows;
    }

    private static List<String> row(EditWeek week, String waiting, boolean rest) {
        String lessons = week.idle() ? waiting : (rest ? "rest of " : "") + String.join(", ", week.finished());
        String begun = week.begun().isEmpty() ? "" : (lessons.isEmpty() ? "" : ", ") + "part of " + week.begun();
        List<String> names = Text.wrap(lessons + begun, LESSONS);
        List<String> rows = new ArrayList<>();
        rows.add(String.format(
                Locale.ROOT,
                "%-11s %s %6.1f %6.1f",
                week.begins(),
                Text.fit(names.get(0), LESSONS),
                week.hours(),
                week.slack()));
        names.stream().skip(1).forEach(more -> rows.add(" ".repeat(12) + more));
        return rows;
    }

    /** How a number of weeks compares with what is usual. */
    public static String sanity(int weeks) {
        String usual = "Your plan has " + Text.count(weeks, "week") + " of editing. A first course usually takes "
                + EditPlan.FEWEST_WEEKS + " to " + EditPlan.MOST_WEEKS + " (common practice)";
        if (weeks < EditPlan.FEWEST_WEEKS) {
            return usual
                    + ". Yours is shorter: that is right for a small course, or if you have edited before; otherwise"
                    + " plan more time.";
        }
        return weeks > EditPlan.MOST_WEEKS
                ? usual + ". More hours a week, simpler pictures or a shorter course would bring the end nearer."
                : usual + ".";
    }

    /** Where the hours and the limits of a week come from. */
    public static String sources(Editing editing, List<EditTask> tasks) {
        String kinds = Arrays.stream(LessonKind.values())
                .map(kind -> rate(editing.rates().getOrDefault(kind, kind.rate())) + " with " + kind.words())
                .collect(Collectors.joining(", "));
        StringBuilder text = new StringBuilder("To edit a lesson takes " + kinds
                + "; a longer lesson takes more in proportion. Unless you set them yourself these are the hours of a"
                + " university's course team for up to ten minutes (Crosslin, Creating Online Learning Experiences,"
                + " ch. 10: trade practice). ");
        text.append(own(tasks));
        return text
                + String.format(
                        Locale.ROOT,
                        "To look through a film or draft that Bookholder made takes 2 minutes for each minute (trade"
                                + " practice). A week has %s hours for editing (common practice beside other work: %.0f);"
                                + " %.0f %% of them are kept for revisions and retakes (%.0f %% unless set: our choice)."
                                + " At most %s a week are finished (common practice: %d).",
                        number(editing.hoursAWeek()),
                        Editing.USUAL_HOURS,
                        editing.slack() * 100,
                        Editing.USUAL_SLACK * 100,
                        Text.count(editing.lessonsAWeek(), "lesson"),
                        Editing.USUAL_LESSONS);
    }

    private static String rate(EditingRate rate) {
        return rate.least() > 0 ? number(rate.least()) + " h" : number(rate.perMinute()) + " h for each minute";
    }

    /** What the course's own edits show. */
    private static String own(List<EditTask> tasks) {
        List<EditTask> known =
                tasks.stream().filter(task -> task.took().isPresent()).toList();
        if (known.isEmpty()) {
            return "Note your own hours when you mark a lesson as edited: they count more and more from then on. ";
        }
        double took = known.stream().mapToDouble(task -> task.took().orElse(0)).sum();
        double estimated = known.stream().mapToDouble(EditTask::hours).sum();
        return String.format(
                Locale.ROOT,
                "Your own edits so far (%s) took %s h instead of %s; what is left is estimated by that more and more. ",
                Text.count(known.size(), "lesson"),
                number(took),
                number(estimated));
    }

    private static String number(double value) {
        return new DecimalFormat("0.##", DecimalFormatSymbols.getInstance(Locale.ROOT)).format(value);
    }

    /** Two bars for each week: lessons left according to the plan, and lessons really left. */
    private static List<String> burnDown(BurnDown burnDown, int lessons) {
        List<String> out = new ArrayList<>();
        int scale = Math.max(1, (lessons + MOST_BARS - 1) / MOST_BARS);
        out.add("How many lessons are left to edit at the beginning of each week"
                + (scale == 1 ? ":" : " (a mark for " + scale + "):"));
        int weeks = Math.max(burnDown.planned().size(), burnDown.real().size());
        for (int week = 0; week < weeks; week++) {
            boolean known = week < burnDown.real().size();
            int planned = week < burnDown.planned().size()
                    ? burnDown.planned().get(week)
                    : burnDown.planned().get(burnDown.planned().size() - 1);
            out.add(bar(burnDown.from().plusWeeks(week).toString(), "planned", planned, "=", scale));
            if (known) {
                int real = burnDown.real().get(week);
                out.add(bar("", week == burnDown.real().size() - 1 ? "today" : "really", real, "#", scale));
            }
        }
        return out;
    }

    private static String bar(String week, String what, int left, String mark, int scale) {
        return String.format(
                        Locale.ROOT, "%-11s %-7s %4d %s", week, what, left, mark.repeat((left + scale - 1) / scale))
                .stripTrailing();
    }

    /** Until when the edit is planned, and when it will be done at the speed so far. */
    public static String forecast(BurnDown burnDown, EditPlan plan) {
        LocalDate planned = plan.ends(burnDown.from());
        int left = burnDown.real().isEmpty()
                ? 1
                : burnDown.real().get(burnDown.real().size() - 1);
        if (left == 0) {
            return "The edit is done; it was planned until " + planned + ".";
        }
        if (burnDown.forecast().isEmpty()) {
            return "Planned until " + planned + ". No forecast: " + burnDown.speedFrom() + ".";
        }
        return String.format(
                Locale.ROOT,
                "Planned until %s; forecast %s, %s.",
                planned,
                burnDown.forecast().get(),
                burnDown.speed() == 1
                        ? burnDown.speedFrom()
                        : String.format(
                                Locale.ROOT,
                                "at %.2g of the planned speed, %s",
                                burnDown.speed(),
                                burnDown.speedFrom()));
    }

    /** Costs, line by line. */
    public static List<String> costs(Costs costs, List<EditTask> tasks) {
        double hours = tasks.stream().mapToDouble(EditTask::hours).sum();
        Balance balance = Balance.of(costs, hours);
        List<String> out = new ArrayList<>();
        out.add(String.format(
                Locale.ROOT,
                "If you edit it yourself: %s, covered by %s",
                money(costs, balance.own()),
                Text.count(balance.ownSales(), "sale")));
        out.add(String.format(
                Locale.ROOT, "  equipment %.2f, and %.1f hours at %.2f", costs.equipment(), hours, costs.hour()));
        if (costs.hired() > 0) {
            out.add(String.format(
                    Locale.ROOT,
                    "If others edit it: %s, covered by %s",
                    money(costs, balance.hired()),
                    Text.count(balance.hiredSales(), "sale")));
            out.add(String.format(
                    Locale.ROOT, "  equipment %.2f, and the quote %.2f", costs.equipment(), costs.hired()));
        } else {
            out.add("If others edit it: no quote; write hired course: or hired lesson: below costs:");
        }
        out.add(String.format(
                Locale.ROOT,
                "One sale brings %s: %.0f %% of %.2f. All figures are from course.yaml.",
                money(costs, costs.price() * costs.kept()),
                costs.kept() * 100,
                costs.price()));
        return out;
    }

    private static String money(Costs costs, double amount) {
        String text = String.format(Locale.ROOT, "%.2f", amount);
        return costs.currency().isEmpty() ? text : text + " " + costs.currency();
    }
}
