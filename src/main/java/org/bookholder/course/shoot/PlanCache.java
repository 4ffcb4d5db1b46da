package org.bookholder.course.shoot;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Shooting;

/**
 * Keeps the last plans of sessions, for those who look at a course again and again: they are made anew only when something has changed on
 * which they depend. Used by one thread at a time.
 */
public final class PlanCache {
    /** That of now, and the one that would hold if no day had been lost. */
    private static final int KEPT = 2;

    private final Planner planner;
    private final Deque<Planned> last = new ArrayDeque<>();

    /** Makes a plan, as {@link ChosenDays#plan} does. */
    @FunctionalInterface
    public interface Planner {
        /** Plans sessions for {@code works}. */
        SessionPlan plan(List<RecordingTask> works, Shooting shooting, Terms terms, LocalDate today);
    }

    /** All that a plan depends on. */
    private record Question(List<RecordingTask> works, Shooting shooting, Terms terms, LocalDate today) {}

    private record Planned(Question question, SessionPlan plan) {}

    /** An empty cache of the plans of {@code planner}, which must give the same plan for the same arguments. */
    public PlanCache(Planner planner) {
        this.planner = planner;
    }

    /** The plan for these arguments. */
    public SessionPlan plan(List<RecordingTask> works, Shooting shooting, Terms terms, LocalDate today) {
        Question question = new Question(List.copyOf(works), shooting, terms, today);
        Optional<Planned> known = last.stream()
                .filter(planned -> planned.question().equals(question))
                .findFirst();
        Planned answer = known.orElseGet(() -> new Planned(question, planner.plan(works, shooting, terms, today)));
        last.remove(answer);
        last.addFirst(answer);
        if (last.size() > KEPT) {
            last.removeLast();
        }
        return answer.plan();
    }
}
