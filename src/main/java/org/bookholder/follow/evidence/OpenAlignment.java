package org.bookholder.follow.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.speech.RecognizedWord;

/**
 * Aligns the words that the open ear heard with the words of a line: the cheapest alignment by their letters (an edit
 * distance over words, in which one word may match two or three).
 */
public final class OpenAlignment {
    private static final double DROPPED = 0.9;
    private static final double ADDED = 0.8;
    private static final double UNLIKE = 1.4;

    /**
     * The cost of each extra or missing word when several words match one, so that words are joined only if that helps.
     */
    private static final double JOINED = 0.15;

    private static final int MOST_JOINED = 3;

    /** How many words the two may be out of step; limits the work for very long lines. */
    private static final int BAND = 40;

    private final List<PreparedWord> words;
    private final Rewording rewording;
    private final List<RecognizedWord> heard;
    private final double[][] cost;
    private final int[][] wordsTaken;
    private final int[][] heardTaken;
    private final List<List<RecognizedWord>> counterparts = new ArrayList<>();
    private final List<Extra> extras = new ArrayList<>();

    /**
     * A word that the open ear heard and that matches no word of the line.
     *
     * @param after how many words of the line come before it
     * @param word what was heard
     */
    public record Extra(int after, RecognizedWord word) {}

    public OpenAlignment(List<PreparedWord> words, List<RecognizedWord> heard) {
        this.words = words;
        this.rewording = new Rewording(words);
        this.heard = heard;
        cost = new double[words.size() + 1][heard.size() + 1];
        wordsTaken = new int[words.size() + 1][heard.size() + 1];
        heardTaken = new int[words.size() + 1][heard.size() + 1];
        for (int i = 0; i <= words.size(); i++) {
            for (int j = 0; j <= heard.size(); j++) {
                cost[i][j] = i + j == 0 ? 0 : Double.POSITIVE_INFINITY;
                if (inBand(i, j)) {
                    fill(i, j);
                }
            }
        }
        traceBack();
    }

    private boolean inBand(int i, int j) {
        return Math.abs((long) i * heard.size() - (long) j * words.size())
                <= (long) BAND * Math.max(words.size(), heard.size());
    }

    private void fill(int i, int j) {
        if (i > 0) {
            offer(i, j, 1, 0, words.get(i - 1).forms().isEmpty() ? ADDED / 4 : DROPPED);
        }
        if (j > 0) {
            offer(i, j, 0, 1, ADDED);
        }
        double single = 1;
        for (int k = 1; k <= MOST_JOINED && i > 0 && k <= j; k++) {
            String heardTogether = joined(j - k, j);
            double together = rewording.ofWord(i - 1, heardTogether) ? 0 : distance(i - 1, heardTogether);
            single = Math.min(single, distance(i - 1, joined(j - k, j - k + 1)));
            // Words count as pieces of one word only if together they resemble it more than any of them alone.
            if (k == 1 || together < single) {
                offer(i, j, 1, k, UNLIKE * together + (k - 1) * JOINED);
            }
        }
        if (i > 1 && j > 0) {
            String two = spoken(i - 2) + spoken(i - 1);
            String one = joined(j - 1, j);
            double unlike = rewording.ofPair(i - 2, one) ? 0 : TextSimilarity.share(two, one);
            offer(i, j, 2, 1, 2 * UNLIKE * unlike + JOINED);
        }
    }

    private void offer(int i, int j, int fromWords, int fromHeard, double step) {
        double total = cost[i - fromWords][j - fromHeard] + step;
        if (total < cost[i][j]) {
            cost[i][j] = total;
            wordsTaken[i][j] = fromWords;
            heardTaken[i][j] = fromHeard;
        }
    }

    private void traceBack() {
        for (int i = 0; i < words.size(); i++) {
            counterparts.add(List.of());
        }
        int i = words.size();
        int j = heard.size();
        while (i + j > 0) {
            int w = wordsTaken[i][j];
            int h = heardTaken[i][j];
            if (w == 0) {
                extras.add(0, new Extra(i, heard.get(j - 1)));
            }
            for (int k = 1; k <= w; k++) {
                counterparts.set(i - k, heard.subList(j - h, j));
            }
            i -= w;
            j -= h;
        }
    }

    /** The words heard for a word of the line, given by its index from 0; empty if none were. */
    public List<RecognizedWord> counterpart(int word) {
        return counterparts.get(word);
    }

    /** The same as a text with spaces. */
    public String said(int word) {
        return counterpart(word).stream().map(RecognizedWord::text).collect(Collectors.joining(" "));
    }

    /** Whether a different wording with the same meaning was heard for a word, or for it together with a neighbour. */
    public boolean reworded(int word) {
        return rewordedFrom(word) || rewording.ofPair(word - 1, said(word));
    }

    /** The same, and the word is the only or the first one that this wording was heard for. */
    public boolean rewordedFrom(int word) {
        return rewording.ofWord(word, text(counterpart(word))) || rewording.ofPair(word, said(word));
    }

    /** Whether exactly this word was heard. */
    public boolean exact(int word) {
        return !counterpart(word).isEmpty() && distance(word, text(counterpart(word))) == 0;
    }

    private static String text(List<RecognizedWord> heard) {
        StringBuilder text = new StringBuilder();
        heard.forEach(w -> text.append(w.text()));
        return text.toString();
    }

    /** The words that match no word of the line, in order. */
    public List<Extra> extras() {
        return extras;
    }

    private double distance(int word, String text) {
        PreparedWord prepared = words.get(word);
        double least = 1;
        for (List<String> form : prepared.forms()) {
            least = Math.min(least, TextSimilarity.share(String.join("", form), text));
        }
        for (List<String> form : prepared.word().spoken()) {
            least = Math.min(least, TextSimilarity.share(String.join("", form), text));
        }
        return least;
    }

    private String spoken(int word) {
        return String.join("", words.get(word).word().spoken().get(0));
    }

    private String joined(int from, int to) {
        return to - from == 1 ? heard.get(from).text() : text(heard.subList(from, to));
    }
}
