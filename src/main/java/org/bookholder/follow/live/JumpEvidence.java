package org.bookholder.follow.live;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.bookholder.follow.graph.PathStep;
import org.bookholder.follow.graph.ReadingGraph;

/**
 * Where the best explanation of what was heard last jumped to, and the script's words that were heard since.
 *
 * @param word the word that it landed on; -1 if it did not jump within the words looked back on
 * @param afterAside whether something that is not in the script was said just before
 * @param since the words since, or the last {@value #MOST}
 */
record JumpEvidence(int word, boolean afterAside, List<String> since) {
    private static final int MOST = 12;

    /** The landing of a chain; a place to which the position was put by hand is none. */
    static JumpEvidence of(PathStep best, ReadingGraph graph) {
        Deque<String> since = new ArrayDeque<>();
        PathStep step = best;
        while (step != null && step.kind() != PathStep.Kind.START && since.size() < MOST) {
            if (step.kind() == PathStep.Kind.MATCH) {
                since.addFirst(graph.tokenText(step.node()));
            }
            if (step.jumped()) {
                boolean afterAside = step.before() != null && step.before().off();
                return new JumpEvidence(graph.wordOf(step.node()), afterAside, List.copyOf(since));
            }
            step = step.before();
        }
        return new JumpEvidence(-1, false, List.copyOf(since));
    }

    boolean jumped() {
        return word >= 0;
    }
}
