package org.bookholder.follow.graph;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/** The explanations of the words heard so far that are worth keeping: the best one for each place in the graph. */
public final class Beam {
    private static final int MAX_STEPS = 96;

    private final Map<Integer, PathStep> steps = new HashMap<>();
    private final PathStep best;

    public Beam(PathStep start) {
        best = start;
        steps.put(start.key(), start);
    }

    private Beam(PathStep best, Map<Integer, PathStep> kept) {
        this.best = best;
        steps.putAll(kept);
    }

    public PathStep best() {
        return best;
    }

    /**
     * The same explanations and one more: that reading continues at {@code place}. The user put the position there, so
     * this costs nothing.
     */
    public Beam orAt(int place) {
        PathStep there = best.then(PathStep.Kind.START, place, -1, true, null, best.cost());
        Map<Integer, PathStep> kept = new HashMap<>(steps);
        kept.put(there.key(), there);
        return new Beam(there, kept);
    }

    public Collection<PathStep> steps() {
        return steps.values();
    }

    /** Collects the steps of the next beam. */
    static final class Builder {
        private final Map<Integer, PathStep> candidates = new HashMap<>();
        private double bestCost = Double.POSITIVE_INFINITY;
        private final double width;

        Builder(double width) {
            this.width = width;
        }

        /** Whether a step of this cost could still be kept. */
        boolean wants(double cost) {
            return cost < bestCost + width;
        }

        void offer(PathStep step) {
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
                                .mapToDouble(PathStep::cost)
                                .sorted()
                                .skip(MAX_STEPS - 1L)
                                .findFirst()
                                .orElse(limit));
            }
            Map<Integer, PathStep> kept = new HashMap<>();
            PathStep best = null;
            for (PathStep step : candidates.values()) {
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
