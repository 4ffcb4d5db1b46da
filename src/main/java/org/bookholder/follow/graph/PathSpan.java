package org.bookholder.follow.graph;

import java.util.List;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * Consecutive steps of the settled path: one reading of one line, or speech that is not in the script.
 *
 * @param line the line that was read, from 0, or {@value #OFF}
 * @param steps its steps, in order, each with its token
 */
public record PathSpan(int line, List<PathStep> steps) {
    /** Line number that marks speech that is not in the script. */
    public static final int OFF = -1;

    public PathSpan {
        steps = List.copyOf(steps);
    }

    public boolean off() {
        return line == OFF;
    }

    /** The tokens, in order. */
    public List<RecognizedWord> heard() {
        return steps.stream().map(PathSpan::token).toList();
    }

    public StreamTime start() {
        return token(steps.get(0)).start();
    }

    public StreamTime end() {
        return token(steps.get(steps.size() - 1)).end();
    }

    public static RecognizedWord token(PathStep step) {
        RecognizedWord heard = step.heard();
        if (heard == null) {
            throw new IllegalArgumentException("a settled step must have its token");
        }
        return heard;
    }
}
