package org.bookholder.course.shoot;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.bookholder.course.Shooting;

/**
 * What becomes of the lessons of a plan in another one.
 *
 * @param lost recording days on which nothing was recorded; none if the plan changed for another reason
 * @param since what is told of an earlier plan; empty if the change is told at once, or comes from lost days
 * @param moves the lessons that are recorded on another day, in order
 * @param last the last recording day before and now; empty if it stays, or one of them is unknown
 */
public record PlanChange(List<LocalDate> lost, Optional<Since> since, List<Move> moves, Optional<Last> last) {
    private static final int MOST = 8;

    /** Copies the lists. */
    public PlanChange {
        lost = List.copyOf(lost);
        moves = List.copyOf(moves);
    }

    /**
     * A lesson that is recorded on another day.
     *
     * @param name its name
     * @param from its day before; empty if it had none
     * @param to its day now; empty if there is no place for it
     */
    public record Move(String name, Optional<LocalDate> from, Optional<LocalDate> to) {}

    /** The last recording day, before and now. */
    public record Last(LocalDate before, LocalDate now) {}

    /**
     * An earlier plan that somebody saw.
     *
     * @param shown the day on which it was shown
     * @param without the recording days to come that the course has no more
     * @param with those that it did not have
     * @param told whether lessons moved that are told of with the lost days
     */
    public record Since(LocalDate shown, List<LocalDate> without, List<LocalDate> with, boolean told) {
        /** Copies the lists. */
        public Since {
            without = List.copyOf(without);
            with = List.copyOf(with);
        }
    }

    /** Compares two plans. */
    public static PlanChange between(PlanDays before, PlanDays now) {
        return between(List.of(), Optional.empty(), before, now);
    }

    /**
     * What has changed since a plan was shown, beside what is told otherwise; empty if nothing has.
     *
     * @param shown the day on which it was shown
     * @param told what days have changed on which nothing was recorded
     */
    public static Optional<PlanChange> since(
            LocalDate shown, PlanDays before, PlanDays now, Optional<PlanChange> told, LocalDate today) {
        PlanChange all = between(List.of(), Optional.empty(), before, now);
        List<Move> moves = all.moves().stream()
                .filter(move -> told.stream()
                        .flatMap(change -> change.moves().stream())
                        .noneMatch(other ->
                                other.name().equals(move.name()) && other.to().equals(move.to())))
                .toList();
        Since since = new Since(
                shown,
                missing(before, now, today),
                missing(now, before, today),
                moves.size() < all.moves().size());
        boolean same =
                moves.isEmpty() && since.without().isEmpty() && since.with().isEmpty();
        return same
                ? Optional.empty()
                : Optional.of(new PlanChange(
                        List.of(),
                        Optional.of(since),
                        moves,
                        all.last().filter(last -> told.flatMap(PlanChange::last).isEmpty())));
    }

    /** The days to come that one plan has and another has not. */
    private static List<LocalDate> missing(PlanDays from, PlanDays other, LocalDate today) {
        return from.given().stream()
                .filter(day -> !day.isBefore(today) && !other.given().contains(day))
                .toList();
    }

    /**
     * What the days have changed on which nothing was recorded since the last recording; empty if there are none, or nothing is left to
     * record.
     *
     * @param planner makes plans
     * @param recorded the day of the last recording, if there was one
     * @param now the plan as it is
     */
    public static Optional<PlanChange> byLostDays(
            PlanCache.Planner planner,
            List<RecordingTask> works,
            Shooting shooting,
            Terms terms,
            Optional<LocalDate> recorded,
            LocalDate today,
            SessionPlan now) {
        List<LocalDate> lost = lostDays(shooting, recorded, today);
        return lost.isEmpty() || works.isEmpty()
                ? Optional.empty()
                : Optional.of(between(
                        lost,
                        Optional.empty(),
                        PlanDays.of(shooting, planner.plan(works, shooting, terms, lost.get(0))),
                        PlanDays.of(shooting, now)));
    }

    /** The recording days that are over and on which nothing was recorded, since the last recording. */
    public static List<LocalDate> lostDays(Shooting shooting, Optional<LocalDate> recorded, LocalDate today) {
        return shooting.days().stream()
                .map(Shooting.Day::date)
                .filter(day -> day.isBefore(today))
                .filter(day -> recorded.filter(last -> !day.isAfter(last)).isEmpty())
                .toList();
    }

    /** A lesson that is in the plan no more is recorded, or gone from the course. */
    private static PlanChange between(List<LocalDate> lost, Optional<Since> since, PlanDays before, PlanDays now) {
        List<Move> moves = new ArrayList<>();
        now.lessons().forEach((name, to) -> {
            Optional<LocalDate> from = before.lessons().getOrDefault(name, Optional.empty());
            if (!from.equals(to)) {
                moves.add(new Move(name, from, to));
            }
        });
        Optional<Last> last = before.last()
                .flatMap(then -> now.last().filter(day -> !day.equals(then)).map(day -> new Last(then, day)));
        return new PlanChange(lost, since, moves, last);
    }

    /** The change in sentences, lessons by their titles; none if nothing moved. */
    public List<String> sentences(UnaryOperator<String> titles) {
        List<String> out = new ArrayList<>();
        if (!lost.isEmpty()) {
            out.add("Nothing was recorded on " + days(lost)
                    + (moves.isEmpty() ? "; that moved no lesson." : ". So these lessons moved:"));
        } else if (since.isPresent()) {
            out.add(begins(since.get()));
        } else if (!moves.isEmpty()) {
            out.add("These lessons moved:");
        }
        moves.stream().limit(MOST).forEach(move -> out.add(titles.apply(move.name()) + ": " + way(move)));
        if (moves.size() > MOST) {
            out.add("and " + (moves.size() - MOST) + " more");
        }
        last.ifPresent(
                days -> out.add("The last recording day is " + days.now() + " instead of " + days.before() + "."));
        return out;
    }

    /** For example "Since the plan was last shown, on 2027-03-01: 2027-03-09 is no recording day any more. So these lessons moved:". */
    private String begins(Since known) {
        List<String> days = new ArrayList<>();
        if (!known.without().isEmpty()) {
            days.add(days(known.without())
                    + (known.without().size() == 1
                            ? " is no recording day any more"
                            : " are no recording days any more"));
        }
        if (!known.with().isEmpty()) {
            days.add(days(known.with())
                    + (known.with().size() == 1 ? " became a recording day" : " became recording days"));
        }
        String begins = "Since the plan was last shown, on " + known.shown() + ": ";
        return days.isEmpty()
                ? begins + "these lessons moved:"
                : begins
                        + String.join(", and ", days)
                        + (!moves.isEmpty()
                                ? ". So these lessons moved:"
                                : known.told() ? "." : "; that moved no lesson.");
    }

    private static String days(List<LocalDate> days) {
        return String.join(", ", days.stream().map(LocalDate::toString).toList());
    }

    private static String way(Move move) {
        String from = move.from().map(LocalDate::toString).orElse("");
        if (move.to().isEmpty()) {
            return "was to be recorded on " + from + "; no day has room for it any more";
        }
        return from.isEmpty() ? "now on " + move.to().get() : move.to().get() + " instead of " + from;
    }
}
