package org.bookholder.follow.settle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.bookholder.follow.graph.Beam;
import org.bookholder.follow.graph.PathStep;
import org.bookholder.follow.graph.ViterbiTracker;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * Finds the path through the script that best explains a take, from the script ear's final words and their times.
 *
 * <p>A step is passed on as soon as all remaining explanations agree on it, or when the take ends.
 */
final class SettlingPath {
    private static final StreamTime PAUSE = StreamTime.ofSeconds(0.2);

    private final ViterbiTracker tracker;
    private Beam beam;
    private PathStep handedOn;
    private StreamTime lastEnd;

    SettlingPath(ViterbiTracker tracker, int word, StreamTime start) {
        this.tracker = tracker;
        handedOn = PathStep.start(word);
        beam = new Beam(handedOn);
        lastEnd = start;
    }

    Beam beam() {
        return beam;
    }

    /** When the last word that was heard ended. */
    StreamTime lastEnd() {
        return lastEnd;
    }

    /** Takes in final words and returns the steps that are now certain, in order. */
    List<PathStep> hear(List<RecognizedWord> words) {
        for (RecognizedWord word : words) {
            boolean pause = word.start().since(lastEnd).compareTo(PAUSE) > 0;
            beam = tracker.hear(beam, word.text(), pause, word);
            lastEnd = word.end();
        }
        return handOn(commonAncestor());
    }

    /** Continues the reading at another word. */
    void move(int word) {
        beam = beam.orAt(word);
    }

    /** Returns the remaining steps of the best explanation. */
    List<PathStep> finish() {
        return handOn(beam.best());
    }

    /** The steps of the best explanation so far that are not certain yet, in order. */
    List<PathStep> ahead() {
        return since(beam.best());
    }

    private List<PathStep> handOn(PathStep to) {
        List<PathStep> steps = since(to);
        handedOn = to;
        return steps;
    }

    /** The steps after the last one passed on, up to {@code to}. */
    private List<PathStep> since(PathStep to) {
        List<PathStep> steps = new ArrayList<>();
        for (PathStep step = to; step != null && step.depth() > handedOn.depth(); step = step.before()) {
            steps.add(step);
        }
        Collections.reverse(steps);
        return steps;
    }

    /** The newest step that all remaining explanations share. */
    private PathStep commonAncestor() {
        Set<PathStep> heads = Collections.newSetFromMap(new IdentityHashMap<>());
        heads.addAll(beam.steps());
        while (heads.size() > 1) {
            int deepest = heads.stream().mapToInt(PathStep::depth).max().orElse(0);
            List<PathStep> lowest =
                    heads.stream().filter(s -> s.depth() == deepest).toList();
            for (PathStep step : lowest) {
                heads.remove(step);
                heads.add(step.before() == null ? handedOn : step.before());
            }
        }
        return heads.iterator().next();
    }
}
