package org.bookholder.follow;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/** The explanations of what was heard so far that are worth keeping: the best one for each place. */
final class Beam {
    private static final int MAX_STEPS = 96;

    private final Map<Integer, Step> steps = new HashMap<>();
    private final Step best;

    Beam(Step start) {
        best = start;
        steps.put(start.key(), start);
    }

    private Beam(Step best, Map<Integer, Step> kept) {
        this.best = best;
        steps.putAll(kept);
    }

    Step best() {
        return best;
    }

    /** The same beliefs and one more: that reading goes on at {@code place}, put there by hand and so free of cost. */
    Beam orAt(int place) {
        Step there = best.then(Step.Kind.START, place, -1, true, null, best.cost());
        Map<Integer, Step> kept = new HashMap<>(steps);
        kept.put(there.key(), there);
        return new Beam(there, kept);
    }

    Collection<Step> steps() {
        return steps.values();
    }

    /** Collects the steps of the next beam. */
    static final class Builder {
        private final Map<Integer, Step> candidates = new HashMap<>();
        private double bestCost = Double.POSITIVE_INFINITY;
        private final double width;

        Builder(double width) {
            this.width = width;
        }

        /** Whether a step of this cost could still be kept. */
        boolean wants(double cost) {
            return cost < bestCost + width;
        }

        void offer(Step step) {
            if (wants(step.cost())) {
                bestCost = Math.min(bestCost, step.cost());
                candidates.merge(step.key(), step, (a, b) -> b.cost() < a.cost() ? b : a);
            }
        }

        Beam build() {
            double limit = bestCost + width;
            if (candidates.size() > MAX_STEPS) {
                limit = Math.min(
                        limit,
                        candidates.values().stream()
                                .mapToDouble(Step::cost)
                                .sorted()
                                .skip(MAX_STEPS - 1L)
                                .findFirst()
                                .orElse(limit));
            }
            Map<Integer, Step> kept = new HashMap<>();
            Step best = null;
            for (Step step : candidates.values()) {
                if (step.cost() <= limit) {
                    kept.put(step.key(), step);
                }
                if (best == null || step.cost() < best.cost()) {
                    best = step;
                }
            }
            if (best == null) {
                throw new IllegalStateException("every token has an explanation, so a beam cannot be empty");
            }
            return new Beam(best, kept);
        }
    }
}
