package org.bookholder.follow;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.Step.Kind;
import org.bookholder.timing.StreamTime;

/** The words of one line as the script ear heard them in one reading; a word read again counts by its last reading. */
final class Heard {
    /** The share of a line's words that may be missing at an end for the line still to count as read to that end. */
    private static final double MISSING = 0.15;

    private final ReadingGraph graph;
    private final int first;
    private final StreamTime[] start;
    private final StreamTime[] end;
    private final boolean[] matched;
    private final StreamTime spanStart;
    private final StreamTime spanEnd;

    Heard(ReadingGraph graph, Span span) {
        this.graph = graph;
        first = graph.firstWord(span.line());
        int length = graph.firstWord(span.line() + 1) - first;
        start = new StreamTime[length];
        end = new StreamTime[length];
        matched = new boolean[length];
        spanStart = span.start();
        spanEnd = span.end();
        for (Step step : span.steps()) {
            if (step.node() >= 0) {
                hear(step);
            }
        }
    }

    private void hear(Step step) {
        int word = graph.wordOf(step.node()) - first;
        boolean within = step.before() != null && graph.insideWord(step.before().place());
        if (!within) {
            start[word] = Span.token(step).start();
            matched[word] = true;
        }
        end[word] = Span.token(step).end();
        matched[word] &= step.kind() == Kind.MATCH;
    }

    int length() {
        return start.length;
    }

    /** Whether the script ear heard the word as written. */
    boolean matched(int word) {
        return matched[word];
    }

    /** Whether the reading begins at the line's beginning and reaches its end. */
    boolean complete() {
        int allowed = Math.max(1, (int) (MISSING * length()));
        return missing(true) <= allowed && missing(false) <= allowed;
    }

    private int missing(boolean atStart) {
        int count = 0;
        for (int i = 0; i < length(); i++) {
            int word = atStart ? i : length() - 1 - i;
            if (matched[word]) {
                break;
            }
            count += graph.word(first + word).standIn() || graph.unhearable(first + word) ? 0 : 1;
        }
        return count;
    }

    /** When the last word before {@code word} that was heard as written ended. */
    StreamTime endBefore(int word) {
        for (int i = word - 1; i >= 0; i--) {
            if (matched[i]) {
                return end[i];
            }
        }
        return spanStart;
    }

    /** When the first word after {@code word} that was heard as written begins. */
    StreamTime startAfter(int word) {
        for (int i = word + 1; i < length(); i++) {
            if (matched[i]) {
                return start[i];
            }
        }
        return spanEnd;
    }

    /** The words that something was heard for. */
    List<WordTime> times() {
        List<WordTime> times = new ArrayList<>();
        for (int word = 0; word < length(); word++) {
            if (start[word] != null && end[word] != null && !end[word].isBefore(start[word])) {
                times.add(new WordTime(word + 1, start[word], end[word]));
            }
        }
        return times;
    }
}
