package org.bookholder.follow.live;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.bookholder.follow.graph.PathStep;
import org.bookholder.follow.graph.ReadingGraph;

/**
 * Where the best explanation last jumped to, and the script words that were heard since.
 *
 * @param word the word that it jumped to; -1 if there was no jump among the last few words
 * @param afterAside whether speech that is not in the script came just before
 * @param since the words since then, at most the last {@value #MOST}
 */
record JumpEvidence(int word, boolean afterAside, List<String> since) {
    private static final int MOST = 12;

    /** The last jump of a chain of explanations; moving the position by hand does not count as a jump. */
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
