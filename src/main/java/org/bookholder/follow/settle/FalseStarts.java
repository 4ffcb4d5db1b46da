package org.bookholder.follow.settle;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.follow.evidence.TextSimilarity;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.timing.StreamTime;

/**
 * Finds false starts of which the script ear recognised nothing, so that they look like speech that is not in the
 * script: what the open ear heard sounds like the beginning of the line that is read directly afterwards.
 */
final class FalseStarts {
    /**
     * Up to this share of edited letters, two beginnings count as the same one, misheard. Values from 0.45 to 0.55 made
     * no difference in 70 readings; at 0.65, other speech was mistaken for a line.
     */
    private static final double ALIKE = 0.45;

    /** How soon the line must be started again. */
    private static final StreamTime SOON = StreamTime.ofSeconds(1.5);

    private static final int FEWEST_LETTERS = 8;

    private final ReadingGraph graph;
    private final Loudness loudness;

    FalseStarts(ReadingGraph graph, Loudness loudness) {
        this.graph = graph;
        this.loudness = loudness;
    }

    /**
     * Attempts and asides.
     *
     * @param attempts in order of time
     * @param asides likewise
     */
    record Told(List<Attempt> attempts, List<Aside> asides) {}

    /** Moves the false starts from the asides to the attempts; both stay in order of time. */
    Told tell(List<Attempt> attempts, List<Aside> asides) {
        List<Attempt> all = new ArrayList<>();
        List<Aside> left = new ArrayList<>();
        int next = 0;
        for (Aside aside : asides) {
            while (next < attempts.size() && attempts.get(next).start().isBefore(aside.start())) {
                add(all, attempts.get(next++));
            }
            if (next < attempts.size() && begins(aside, attempts.get(next))) {
                StreamTime after = all.isEmpty()
                        ? StreamTime.ZERO
                        : all.get(all.size() - 1).end();
                add(all, brokenOff(aside, attempts.get(next), after));
            } else {
                left.add(aside);
            }
        }
        attempts.subList(next, attempts.size()).forEach(attempt -> add(all, attempt));
        return new Told(all, left);
    }

    private static void add(List<Attempt> all, Attempt attempt) {
        all.add(attempt.withOrdinal(all.size() + 1));
    }

    private Attempt brokenOff(Aside aside, Attempt next, StreamTime after) {
        Loudness.Stretch bounds = loudness.around(aside.start(), aside.end(), after, next.start());
        return new Attempt(
                aside.take(), next.ordinal(), next.line(), bounds.start(), bounds.end(), false, List.of(), List.of());
    }

    private boolean begins(Aside aside, Attempt next) {
        String said = aside.said().replace(" ", "");
        return aside.start().isBefore(next.start())
                && next.start().since(aside.end()).compareTo(SOON) <= 0
                && said.length() >= FEWEST_LETTERS
                && beginningAlike(next.line() - 1, said);
    }

    private boolean beginningAlike(int line, String said) {
        StringBuilder beginning = new StringBuilder();
        for (int word = graph.firstWord(line); word < graph.firstWord(line + 1); word++) {
            PreparedWord prepared = graph.word(word);
            prepared.word().spoken().get(0).forEach(beginning::append);
            if (beginning.length() > 2 * said.length()) {
                return false;
            }
            if (TextSimilarity.share(beginning.toString(), said) <= ALIKE) {
                return true;
            }
        }
        return false;
    }
}
