package org.bookholder.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Outcome;

/**
 * What really happened in a composed reading. Seconds of its sound; lines count from 1.
 *
 * @param lines one for each line of the script, in order
 * @param passages what was said of the script, in order of time
 * @param asides what was said beside it, in order of time
 * @param seconds the whole length
 */
record Truth(List<LineTruth> lines, List<Passage> passages, List<SaidAside> asides, double seconds) {
    /** Copies the lists. */
    Truth {
        lines = List.copyOf(lines);
        passages = List.copyOf(passages);
        asides = List.copyOf(asides);
    }

    /**
     * A line.
     *
     * @param line its number
     * @param outcome what became of it
     * @param deviation how a word departs from the script, if one does
     */
    record LineTruth(int line, Outcome outcome, Optional<Deviation.Kind> deviation) {}

    /**
     * A line, or its beginning, said once.
     *
     * @param line its number
     * @param start when the voice begins
     * @param end when it ends
     * @param complete whether the line was said to its end
     */
    record Passage(int line, double start, double end, boolean complete) {}

    /**
     * Something said that is not in the script.
     *
     * @param afterLine the line before it
     * @param start when the voice begins
     * @param end when it ends
     */
    record SaidAside(int afterLine, double start, double end) {}

    /** The passages of a line. */
    List<Passage> of(int line) {
        return passages.stream().filter(p -> p.line() == line).toList();
    }

    /** The complete passages of a line. */
    List<Passage> completeOf(int line) {
        List<Passage> complete = new ArrayList<>(of(line));
        complete.removeIf(p -> !p.complete());
        return complete;
    }
}
