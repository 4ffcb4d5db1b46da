package org.bookholder.course.shoot;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.bookholder.course.Shooting;

/**
 * What becomes of the lessons of a plan in another one.
 *
 * @param lost recording days on which nothing was recorded; none if the plan changed for another reason
 * @param moves the lessons that are recorded on another day, in order
 * @param last the last recording day before and now; empty if it stays, or one of them is unknown
 */
public record PlanChange(List<LocalDate> lost, List<Move> moves, Optional<Last> last) {
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

    /** Compares two plans. */
    public static PlanChange between(SessionPlan before, SessionPlan now) {
        return between(List.of(), before, now);
    }

    /**
     * What the days have changed on which nothing was recorded since the last recording; empty if there are none, or nothing is left to
     * record.
     *
     * @param recorded the day of the last recording, if there was one
     * @param now the plan as it is
     */
    public static Optional<PlanChange> byLostDays(
            List<RecordingTask> works,
            Shooting shooting,
            Terms terms,
            Optional<LocalDate> recorded,
            LocalDate today,
            SessionPlan now) {
        List<LocalDate> lost = lostDays(shooting, recorded, today);
        return lost.isEmpty() || works.isEmpty()
                ? Optional.empty()
                : Optional.of(between(lost, ChosenDays.plan(works, shooting, terms, lost.get(0)), now));
    }

    /** The recording days that are over and on which nothing was recorded, since the last recording. */
    public static List<LocalDate> lostDays(Shooting shooting, Optional<LocalDate> recorded, LocalDate today) {
        return shooting.days().stream()
                .map(Shooting.Day::date)
                .filter(day -> day.isBefore(today))
                .filter(day -> recorded.filter(last -> !day.isAfter(last)).isEmpty())
                .toList();
    }

    private static PlanChange between(List<LocalDate> lost, SessionPlan before, SessionPlan now) {
        List<Move> moves = new ArrayList<>();
        names(before, now).forEach((lesson, name) -> {
            Optional<LocalDate> from = before.day(lesson);
            Optional<LocalDate> to = now.day(lesson);
            boolean done = now.left().stream().noneMatch(work -> work.lesson() == lesson) && to.isEmpty();
            if (!from.equals(to) && !done) {
                moves.add(new Move(name, from, to));
            }
        });
        Optional<Last> last = last(before)
                .flatMap(then -> last(now).filter(day -> !day.equals(then)).map(day -> new Last(then, day)));
        return new PlanChange(lost, moves, last);
    }

    private static Map<Integer, String> names(SessionPlan before, SessionPlan now) {
        Map<Integer, String> names = new LinkedHashMap<>();
        Stream.of(before, now)
                .flatMap(plan -> Stream.concat(
                        plan.sessions().stream().flatMap(session -> session.works().stream()), plan.left().stream()))
                .sorted(Comparator.comparingInt(RecordingTask::lesson))
                .forEach(work -> names.put(work.lesson(), work.name()));
        return names;
    }

    private static Optional<LocalDate> last(SessionPlan plan) {
        return plan.sessions().stream()
                .flatMap(session -> session.date().stream())
                .max(Comparator.naturalOrder());
    }

    /** The change in sentences, lessons by their titles; none if nothing moved. */
    public List<String> sentences(UnaryOperator<String> titles) {
        List<String> out = new ArrayList<>();
        if (!lost.isEmpty()) {
            out.add("Nothing was recorded on "
                    + String.join(", ", lost.stream().map(LocalDate::toString).toList())
                    + (moves.isEmpty() ? "; that moved no lesson." : ". So these lessons moved:"));
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

    private static String way(Move move) {
        String from = move.from().map(LocalDate::toString).orElse("");
        if (move.to().isEmpty()) {
            return "was to be recorded on " + from + "; no day has room for it any more";
        }
        return from.isEmpty() ? "now on " + move.to().get() : move.to().get() + " instead of " + from;
    }
}
