package org.bookholder.follow.graph;

import org.bookholder.follow.graph.PathStep.Kind;
import org.bookholder.speech.RecognizedWord;
import org.jspecify.annotations.Nullable;

/**
 * Explains heard tokens as a reading of the script with as few and as likely departures as possible (a Viterbi beam
 * search over the reading graph).
 *
 * <p>The work for a token does not grow with the script: only places near the kept ones and a limited number of jump
 * targets are examined. A longer jump costs more; the surprise of the words that match afterwards must make up for that
 * cost, so that common words alone are not enough evidence for a jump.
 */
public final class ViterbiTracker {
    private static final int MAX_PASSED_OVER = 4;
    private static final int MAX_JUMPS = 48;

    private final ReadingGraph graph;
    private final PathCosts costs;

    public ViterbiTracker(ReadingGraph graph, PathCosts costs) {
        this.graph = graph;
        this.costs = costs;
    }

    /**
     * Explains one more token.
     *
     * @param beam the explanations so far
     * @param text the token
     * @param pause whether there was silence before it
     * @param heard the token with its times, if they are known
     */
    public Beam hear(Beam beam, String text, boolean pause, @Nullable RecognizedWord heard) {
        int token = graph.token(text);
        Beam.Builder next = new Beam.Builder(costs.width());
        Token spoken = new Token(
                token, pause, heard, token == ReadingGraph.UNKNOWN_TOKEN ? costs.unknown() : graph.surprise(token));
        readOn(next, beam.best(), spoken);
        for (PathStep step : beam.steps()) {
            if (next.wants(step.cost())) {
                if (!step.equals(beam.best())) {
                    readOn(next, step, spoken);
                }
                stay(next, step, spoken);
            }
        }
        jump(next, beam.best(), spoken);
        return next.build();
    }

    private record Token(int id, boolean pause, @Nullable RecognizedWord heard, double surprise) {}

    /** The token is the next word or one of the words soon after it, or was said in place of the next word. */
    private void readOn(Beam.Builder next, PathStep step, Token token) {
        double cost = step.cost() + (step.off() ? costs.comeBack() : 0);
        int place = step.place();
        for (int passed = 0; passed <= MAX_PASSED_OVER && next.wants(cost); passed++) {
            consume(next, step, place, token, cost);
            if (place == graph.words()) {
                return;
            }
            cost += passOver(place);
            place = graph.insideWord(place) ? graph.wordAt(place) + 1 : place + 1;
        }
    }

    private void consume(Beam.Builder next, PathStep step, int place, Token token, double cost) {
        for (int node : graph.nodesFrom(place)) {
            boolean match = graph.tokenOf(node) == token.id();
            double total = cost + (match ? costs.match() : costs.substitution() + token.surprise());
            if (next.wants(total)) {
                Kind kind = match ? Kind.MATCH : Kind.SUBSTITUTION;
                next.offer(step.then(kind, graph.after(node), node, false, token.heard(), total));
            }
        }
    }

    private double passOver(int place) {
        int word = graph.wordAt(place);
        if (graph.insideWord(place)) {
            return costs.shortDeletion() / 2;
        }
        if (graph.unhearable(word)) {
            return costs.unhearable();
        }
        return graph.word(word).word().plain().length() <= 3 ? costs.shortDeletion() : costs.deletion();
    }

    /** The token leaves the position unchanged: it was added, or belongs to speech that is not in the script. */
    private void stay(Beam.Builder next, PathStep step, Token token) {
        boolean elastic = !step.off() && beforeUnhearable(step.place());
        double added = step.cost() + (elastic ? costs.match() : costs.insertion()) + token.surprise();
        if (!step.off() && next.wants(added)) {
            next.offer(step.then(Kind.INSERTION, step.place(), -1, false, token.heard(), added));
        }
        double aside = step.cost() + (step.off() ? 0 : costs.leave()) + token.surprise();
        if (next.wants(aside)) {
            next.offer(step.then(Kind.OFF, step.place(), -1, false, token.heard(), aside));
        }
    }

    private boolean beforeUnhearable(int place) {
        boolean next = place < graph.words() && graph.unhearable(place);
        boolean last = place > 0 && place <= graph.words() && graph.unhearable(place - 1);
        return next || last;
    }

    /** The token matches a word elsewhere in the script. */
    private void jump(Beam.Builder next, PathStep step, Token token) {
        if (token.id() <= ReadingGraph.UNKNOWN_TOKEN) {
            return;
        }
        double base = step.cost()
                + (step.off() ? costs.jumpAfterAside() : costs.jump())
                + (token.pause() || step.off() ? 0 : costs.running());
        IntList entries = graph.entries(token.id());
        int origin = graph.wordAt(step.place());
        int middle = entries.lowerBound(firstNodeFrom(origin));
        int from = Math.max(0, Math.min(middle - MAX_JUMPS / 2, entries.size() - MAX_JUMPS));
        for (int i = from; i < Math.min(entries.size(), from + MAX_JUMPS); i++) {
            int node = entries.get(i);
            double cost = base + jumpLength(origin, graph.wordOf(node)) + costs.match();
            if (next.wants(cost)) {
                next.offer(step.then(Kind.MATCH, graph.after(node), node, true, token.heard(), cost));
            }
        }
    }

    private int firstNodeFrom(int word) {
        for (int w = word; w < graph.words(); w++) {
            if (!graph.unhearable(w)) {
                return graph.nodesFrom(w)[0];
            }
        }
        return Integer.MAX_VALUE;
    }

    private double jumpLength(int origin, int target) {
        int lines = graph.line(target) - graph.line(origin);
        int into = target - graph.firstWord(graph.line(target));
        double length = costs.farther() * Math.log1p(Math.abs(lines));
        if (into == 0) {
            return 1 + length;
        }
        if (lines == 0 && target < origin) {
            return 2 + Math.min(2, 0.15 * (origin - target));
        }
        return 1 + length + Math.min(costs.inside(), 1 + into);
    }
}
