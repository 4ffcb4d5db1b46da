package org.bookholder.follow.live;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.evidence.TextSimilarity;
import org.bookholder.timing.StreamTime;

/**
 * A second opinion on the script ear's partial hypotheses: what the open ear heard last.
 *
 * <p>The script ear can only write words of the script, so speech that is not in the script comes out as stray script
 * words. The open ear does not know the script: if both report the same words, those were said.
 */
public final class OpenEarOpinion {
    /** How many words the open ear may be ahead of the script ear. */
    private static final int SLACK = 4;

    private static final int KEPT = 40;
    private static final StreamTime LATEST = StreamTime.ofSeconds(0.6);

    private final List<String> settled = new ArrayList<>();
    private List<String> partial = List.of();
    private StreamTime heardTo = StreamTime.ZERO;

    public void partial(List<String> words, StreamTime to) {
        partial = words;
        heardTo = to;
    }

    /**
     * Takes in a finished utterance.
     *
     * @param next the words of the next one so far
     */
    public void settle(List<String> words, List<String> next, StreamTime to) {
        settled.addAll(words);
        settled.subList(0, Math.max(0, settled.size() - KEPT)).clear();
        partial = next;
        heardTo = to;
    }

    /** Whether the open ear has processed about all the sound up to {@code now}. */
    boolean inTime(StreamTime now) {
        return now.since(heardTo).compareTo(LATEST) <= 0;
    }

    /**
     * The share of the last words, measured in letters, that the open ear heard too, in the same order; from 0 to 1.
     *
     * @param words the last words according to the script ear, at least one
     */
    double agreement(List<String> words) {
        List<String> last = last(words.size() + SLACK);
        // The longest common subsequence, weighted by letters.
        int[] row = new int[last.size() + 1];
        int total = 0;
        for (String word : words) {
            total += word.length();
            int diagonal = 0;
            for (int j = 1; j <= last.size(); j++) {
                int above = row[j];
                int taken = TextSimilarity.same(word, last.get(j - 1)) ? diagonal + word.length() : 0;
                row[j] = Math.max(taken, Math.max(above, row[j - 1]));
                diagonal = above;
            }
        }
        return (double) row[last.size()] / total;
    }

    private List<String> last(int count) {
        List<String> all = new ArrayList<>(settled);
        all.addAll(partial);
        return all.subList(Math.max(0, all.size() - count), all.size());
    }
}
