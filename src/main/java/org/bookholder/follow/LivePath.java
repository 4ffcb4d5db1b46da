package org.bookholder.follow;

import java.util.ArrayList;
import java.util.List;

/**
 * The reading position while the words are being said, from the script ear's partial hypotheses.
 *
 * <p>Only tokens that differ from the partial hypothesis before cost work.
 */
final class LivePath {
    /** Words ahead of the shown one that count as reading on; further is a jump. */
    private static final int READING_ON = 6;

    /** How much better, in nats, a jump must explain what was heard than staying does. */
    private static final double JUMP_MARGIN = 5.0;

    private final ReadingGraph graph;
    private final Tracker tracker;
    private Beam settled;
    private final List<String> tokens = new ArrayList<>();
    private final List<Beam> beams = new ArrayList<>();
    private int shown;
    private boolean readOn;

    LivePath(ReadingGraph graph, Tracker tracker, int word) {
        this.graph = graph;
        this.tracker = tracker;
        this.settled = new Beam(Step.start(word));
        this.shown = word;
    }

    /** The word to be read next. */
    int shown() {
        return shown;
    }

    /** Takes in a partial hypothesis; a place before the utterance's first word is a pause. */
    void partial(List<String> words) {
        int same = 0;
        while (same < Math.min(words.size(), tokens.size()) && words.get(same).equals(tokens.get(same))) {
            same++;
        }
        tokens.subList(same, tokens.size()).clear();
        beams.subList(same, beams.size()).clear();
        for (String word : words.subList(same, words.size())) {
            beams.add(tracker.hear(now(), word, tokens.isEmpty(), null));
            tokens.add(word);
        }
        show();
    }

    /** Takes over what was settled of the utterance that is over. */
    void settle(Beam beam) {
        settled = beam;
        tokens.clear();
        beams.clear();
        show();
    }

    /** Shows another word by hand. */
    void move(int word) {
        if (beams.isEmpty()) {
            settled = settled.orAt(word);
        } else {
            beams.set(beams.size() - 1, now().orAt(word));
        }
        shown = word;
    }

    /** Whether the last change of the shown word was reading on, not a jump. */
    boolean readOn() {
        return readOn;
    }

    /** How many tokens at the end of what was heard are not in the script. */
    int tokensOff() {
        int count = 0;
        for (Step step = now().best(); step != null && step.off(); step = step.before()) {
            count++;
        }
        return count;
    }

    private Beam now() {
        return beams.isEmpty() ? settled : beams.get(beams.size() - 1);
    }

    private void show() {
        Step best = lastSure(now().best());
        int word = graph.wordAt(best.place());
        if (best.off() || word == shown) {
            return;
        }
        if (readsOn(word) || margin(best) >= JUMP_MARGIN) {
            readOn = readsOn(word);
            shown = word;
        }
    }

    /** A word heard in place of another is shown as read only once the words after it match. */
    private static Step lastSure(Step best) {
        Step step = best;
        while (step.kind() == Step.Kind.SUBSTITUTION && step.before() != null) {
            step = step.before();
        }
        return step;
    }

    private boolean readsOn(int word) {
        return word >= shown && word <= shown + READING_ON;
    }

    /** How much dearer the best explanation is that needs no jump from the shown word. */
    private double margin(Step best) {
        double staying = Double.POSITIVE_INFINITY;
        for (Step step : now().steps()) {
            if (readsOn(graph.wordAt(step.place()))) {
                staying = Math.min(staying, step.cost());
            }
        }
        return staying - best.cost();
    }
}
