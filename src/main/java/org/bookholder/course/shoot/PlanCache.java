package org.bookholder.course.shoot;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Shooting;

/**
 * Keeps the last plan of sessions, for those who look at a course again and again: it is made anew only when something has changed on
 * which it depends. Used by one thread at a time.
 */
public final class PlanCache {
    private final Planner planner;
    private Optional<Planned> last = Optional.empty();

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
        if (last.filter(planned -> planned.question().equals(question)).isEmpty()) {
            last = Optional.of(new Planned(question, planner.plan(works, shooting, terms, today)));
        }
        return last.orElseThrow().plan();
    }
}
