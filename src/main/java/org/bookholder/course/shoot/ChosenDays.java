package org.bookholder.course.shoot;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.bookholder.course.Shooting;
import org.bookholder.course.Shooting.Day;

/**
 * Sessions of a course in which somebody has put lessons on days. Such a day holds these lessons; other lessons come there only when the
 * other days have no room for them. All else is planned by {@link SessionPlanner}.
 */
public final class ChosenDays {
    private static final String FULL = "the days on which you put lessons have no more room; add new days";

    private final Assignment placed;
    private final List<RecordingTask> rest;
    private final List<RecordingTask> left = new ArrayList<>();
    private final List<String> why = new ArrayList<>();

    private ChosenDays(List<Day> days, List<RecordingTask> works, Terms terms) {
        placed = new Assignment(new SessionCapacities(days, true, terms));
        rest = new ArrayList<>(works);
        for (int day = 0; day < days.size(); day++) {
            for (RecordingTask work : works) {
                // Of two days that name a lesson the first has it.
                if (days.get(day).lessons().contains(work.name()) && rest.remove(work)) {
                    put(day, work, days.get(day).date());
                }
            }
        }
    }

    private void put(int day, RecordingTask work, LocalDate date) {
        if (!placed.place(day, work)) {
            left.add(work);
            why.add(work.name() + " does not fit on " + date
                    + " beside what else you put there; put it on another day");
        }
    }

    /**
     * Plans sessions.
     *
     * @param works the tasks to record, in order
     * @param shooting the days available, each with the lessons that were put on it
     * @param today earlier days are past; what was put on them is planned like all else
     */
    public static SessionPlan plan(List<RecordingTask> works, Shooting shooting, Terms terms, LocalDate today) {
        List<Day> chosen = shooting.days().stream()
                .filter(day -> !day.date().isBefore(today))
                .filter(day -> works.stream().anyMatch(work -> day.lessons().contains(work.name())))
                .toList();
        if (chosen.isEmpty()) {
            return SessionPlanner.plan(works, shooting, terms, today);
        }
        List<Day> others =
                shooting.days().stream().filter(day -> !chosen.contains(day)).toList();
        return new ChosenDays(chosen, works, terms).with(shooting.on(others), terms, today);
    }

    /** Adds the sessions of the other days, and puts what they have no room for where there is some. */
    private SessionPlan with(Shooting others, Terms terms, LocalDate today) {
        boolean more = others.days().stream().anyMatch(day -> !day.date().isBefore(today));
        SessionPlan plan = more || rest.isEmpty()
                ? SessionPlanner.plan(rest, others, terms, today)
                : new SessionPlan(List.of(), rest, List.of(FULL), others.days().size(), List.of());
        List<RecordingTask> still =
                plan.left().stream().filter(work -> !placedAnywhere(work)).toList();
        left.addAll(still);
        if (!still.isEmpty()) {
            why.addAll(plan.why());
        }
        List<PlannedSession> sessions = Stream.concat(plan.sessions().stream(), placed.sessions().stream())
                .sorted(Comparator.comparing(session -> session.date().orElse(LocalDate.MAX)))
                .toList();
        return new SessionPlan(sessions, left, why, plan.over(), plan.free());
    }

    private boolean placedAnywhere(RecordingTask work) {
        for (int day = 0; day < placed.days(); day++) {
            if (placed.place(day, work)) {
                return true;
            }
        }
        return false;
    }
}
