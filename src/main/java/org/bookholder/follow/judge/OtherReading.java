package org.bookholder.follow.judge;

import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.bookholder.follow.evidence.OpenAlignment;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.normalize.FreeReading;
import org.bookholder.speech.RecognizedWord;

/**
 * Figures and abbreviations of a line that were read in a way that the script's rules do not name, but with the same meaning. What was heard
 * between two other words that were heard as written must be a reading of all that is written between them.
 */
final class OtherReading {
    /** No figures take more words than that; limits the work. */
    private static final int MOST_HEARD = 40;

    /** Beside more words that were not heard as written it isn't known where a figure begins and ends. */
    private static final int MOST_MISHEARD = 2;

    /** So many words may be heard for one of those. */
    private static final int MISHEARD = 2;

    private final List<PreparedWord> words;
    private final List<RecognizedWord> heard;
    private final OpenAlignment alignment;
    private final BitSet covered = new BitSet();
    private final BitSet others = new BitSet();
    private final BitSet firm = new BitSet();

    /** @param heard what the open ear heard of the line, in order of time */
    OtherReading(List<PreparedWord> words, List<RecognizedWord> heard, OpenAlignment alignment) {
        this.words = words;
        this.heard = heard;
        this.alignment = alignment;
        int from = 0;
        for (int word = 0; word <= words.size(); word++) {
            if (word == words.size() || isFixed(word)) {
                look(from, word);
                from = word + 1;
            }
        }
    }

    /** Whether a word, by its index from 0, belongs to what was read in another way. */
    boolean covers(int word) {
        return word >= 0 && covered.get(word);
    }

    /** Whether a figure, by its index from 0, was read as another one. */
    boolean isAnother(int word) {
        return others.get(word);
    }

    /** The same, if the open ear was sure of each word and the words that differ don't sound alike: whatever the script ear heard. */
    boolean isFirmlyAnother(int word) {
        return firm.get(word);
    }

    private boolean isFixed(int word) {
        return alignment.exact(word) && !mayBe(word);
    }

    private boolean mayBe(int word) {
        return FreeReading.mayBe(words.get(word).word().written());
    }

    /** Looks at the words from one index up to another one, which is not included. */
    private void look(int from, int to) {
        List<Integer> figures =
                IntStream.range(from, to).filter(this::mayBe).boxed().toList();
        int first = from == 0 ? 0 : place(from - 1, true) + 1;
        int last = to == words.size() ? heard.size() : place(to, false);
        if (figures.isEmpty() || first >= last || last - first > MOST_HEARD) {
            return;
        }
        List<RecognizedWord> between = heard.subList(first, last);
        if (isReading(from, to, texts(between))) {
            covered.set(from, to);
        } else {
            compare(from, to, between);
        }
    }

    private static List<String> texts(List<RecognizedWord> words) {
        return words.stream().map(RecognizedWord::text).toList();
    }

    /** Compares a figure with what is left when words that were heard as written are taken off at both ends. */
    private void compare(int from, int to, List<RecognizedWord> said) {
        int first = from;
        int last = to;
        List<RecognizedWord> left = said;
        while (last - first > 1) {
            int begin = longest(first, texts(left), true);
            int end = begin > 0 ? 0 : longest(last - 1, texts(left), false);
            if (begin + end == 0) {
                break;
            }
            left = left.subList(begin, left.size() - end);
            first += begin > 0 ? 1 : 0;
            last -= begin > 0 ? 0 : 1;
        }
        List<Integer> figures =
                IntStream.range(first, last).filter(this::mayBe).boxed().toList();
        boolean known = figures.size() == 1
                && !words.get(figures.get(0)).word().spoken().isEmpty();
        if (known && last - first - 1 <= MOST_MISHEARD) {
            compare(figures.get(0), MISHEARD * (figures.get(0) - first), MISHEARD * (last - 1 - figures.get(0)), left);
        }
    }

    /**
     * Compares one figure, beside which other words were misheard: the part of what was said that is nearest to it.
     *
     * @param before how many words at the beginning may belong to words before it
     * @param after the same at the end
     */
    private void compare(int figure, int before, int after, List<RecognizedWord> said) {
        List<List<String>> forms = words.get(figure).word().spoken();
        int least = Integer.MAX_VALUE;
        for (int begin = 0; begin <= Math.min(before, said.size()); begin++) {
            for (int end = said.size(); end >= Math.max(begin + 1, said.size() - after); end--) {
                List<RecognizedWord> part = said.subList(begin, end);
                FigureDifference difference = FigureDifference.of(forms, texts(part));
                if (difference.size() < least) {
                    least = difference.size();
                    boolean sure = part.stream().allMatch(word -> word.confidence() >= OtherMeaning.FIRM);
                    others.set(figure, difference.changesValue());
                    firm.set(figure, sure && difference.clearlyChangesValue());
                }
            }
        }
    }

    /** How many words the longest form of a word takes with which some words begin or end; 0 if they do with none. */
    private int longest(int word, List<String> said, boolean begins) {
        return words.get(word).word().spoken().stream()
                .filter(form -> form.size() <= said.size()
                        && form.equals(
                                begins
                                        ? said.subList(0, form.size())
                                        : said.subList(said.size() - form.size(), said.size())))
                .mapToInt(List::size)
                .max()
                .orElse(0);
    }

    private boolean isReading(int from, int to, List<String> said) {
        Set<Integer> ends = Set.of(0);
        for (int word = from; word < to; word++) {
            Set<Integer> next = new HashSet<>();
            for (int end : ends) {
                next.addAll(ends(word, said, end));
            }
            ends = next;
        }
        return ends.contains(said.size());
    }

    private Set<Integer> ends(int word, List<String> said, int from) {
        Set<Integer> ends = new HashSet<>();
        for (List<String> form : words.get(word).word().spoken()) {
            int end = from + form.size();
            if (end <= said.size() && said.subList(from, end).equals(form)) {
                ends.add(end);
            }
        }
        if (mayBe(word)) {
            ends.addAll(FreeReading.ends(words.get(word).word().written(), said, from));
        }
        return ends;
    }

    /** The place of the last or first word that was heard for a word of the line. */
    private int place(int word, boolean last) {
        List<RecognizedWord> counterpart = alignment.counterpart(word);
        return heard.indexOf(counterpart.get(last ? counterpart.size() - 1 : 0));
    }
}
