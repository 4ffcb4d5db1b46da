package org.bookholder.follow;

import java.util.List;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * Steps of the settled path that belong together: one reading of one line, or speech that is not in the script.
 *
 * @param line the line that was read, from 0, or {@value #OFF}
 * @param steps its steps, in order, each with its token
 */
record Span(int line, List<Step> steps) {
    /** The line of speech that is not in the script. */
    static final int OFF = -1;

    Span {
        steps = List.copyOf(steps);
    }

    boolean off() {
        return line == OFF;
    }

    /** The tokens, in order. */
    List<RecognizedWord> heard() {
        return steps.stream().map(Span::token).toList();
    }

    StreamTime start() {
        return token(steps.get(0)).start();
    }

    StreamTime end() {
        return token(steps.get(steps.size() - 1)).end();
    }

    static RecognizedWord token(Step step) {
        RecognizedWord heard = step.heard();
        if (heard == null) {
            throw new IllegalArgumentException("a settled step must have its token");
        }
        return heard;
    }
}
