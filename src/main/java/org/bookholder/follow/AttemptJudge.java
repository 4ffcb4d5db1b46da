package org.bookholder.follow;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.bookholder.follow.Deviation.Kind;
import org.bookholder.script.PreparedScript.PreparedWord;
import org.bookholder.script.SoundAlike;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/**
 * Turns a reading of a line into an attempt, with the words that were not read as written.
 *
 * <p>A word is called only if the script ear did not hear it and the open ear heard nothing like it at its place: the
 * script ear alone hears what it expects, the open ear alone mishears one word in ten.
 */
final class AttemptJudge {
    /** How far outside an attempt the open ear's words may lie and still be taken for its own. */
    private static final StreamTime MARGIN = StreamTime.ofSeconds(0.2);

    /** By how much the two ears may differ on when a word was said. */
    private static final StreamTime SLACK = StreamTime.ofSeconds(0.1);

    /** How far apart, by letters and by sound, two words may be and still be the same one misheard. */
    private static final double SAME_LETTERS = 0.56;

    private static final double SAME_SOUND = 0.4;

    private final ReadingGraph graph;
    private final OpenWords open;
    private final Loudness loudness;

    AttemptJudge(ReadingGraph graph, OpenWords open, Loudness loudness) {
        this.graph = graph;
        this.open = open;
        this.loudness = loudness;
    }

    /**
     * Judges a reading of a line.
     *
     * @param after when what was read before it ends
     * @param before when what was read after it begins
     */
    Attempt judge(Span span, int take, int ordinal, StreamTime after, StreamTime before) {
        Heard heard = new Heard(graph, span);
        Loudness.Stretch said = heard.said(loudness, span, after, before);
        boolean complete = heard.complete(said);
        Loudness.Stretch bounds = complete
                ? loudness.around(said.start(), said.end(), after, before)
                : loudness.around(span.start(), span.end(), after, before);
        return new Attempt(
                take,
                ordinal,
                span.line() + 1,
                bounds.start(),
                bounds.end(),
                complete,
                heard.times(),
                complete ? deviations(span, heard, said) : List.of());
    }

    private List<Deviation> deviations(Span span, Heard heard, Loudness.Stretch said) {
        int first = graph.firstWord(span.line());
        List<PreparedWord> words = new ArrayList<>();
        for (int word = 0; word < heard.length(); word++) {
            words.add(graph.word(first + word));
        }
        OpenAlignment alignment = new OpenAlignment(
                words, open.between(said.start().since(MARGIN), said.end().plus(MARGIN)));
        List<Deviation> result = new ArrayList<>();
        for (int word = 0; word < heard.length(); word++) {
            Deviation deviation = heard.matched(word) ? null : deviation(words, heard, alignment, word);
            if (deviation != null) {
                result.add(deviation);
            }
        }
        result.addAll(new AddedWords(words, heard, alignment).find(span));
        result.sort(Comparator.comparingInt(Deviation::word));
        return result;
    }

    private @Nullable Deviation deviation(List<PreparedWord> words, Heard heard, OpenAlignment alignment, int word) {
        PreparedWord prepared = words.get(word);
        String plain = prepared.word().plain();
        if (prepared.standIn() || prepared.forms().isEmpty() || FunctionWords.contains(prepared)) {
            return null;
        }
        String said = String.join(" ", texts(alignment.counterpart(word)));
        boolean inPlace = inPlace(heard, alignment.counterpart(word), word);
        if (!said.isEmpty()
                && inPlace
                && (letters(prepared, said) <= SAME_LETTERS || sound(prepared, said) <= SAME_SOUND)) {
            return null;
        }
        return new Deviation(word + 1, plain, said, said.isEmpty() ? Kind.DROPPED : Kind.SWAPPED, 0.9);
    }

    /** Whether what was heard for a word was heard between the words beside it: transposed words are misread. */
    private static boolean inPlace(Heard heard, List<RecognizedWord> counterpart, int word) {
        if (counterpart.isEmpty()) {
            return false;
        }
        StreamTime start = counterpart.get(0).start();
        StreamTime end = counterpart.get(counterpart.size() - 1).end();
        boolean afterNext = word + 1 < heard.length()
                && heard.matched(word + 1)
                && !start.plus(SLACK).isBefore(heard.end(word + 1));
        boolean beforeLast = word > 0
                && heard.matched(word - 1)
                && !heard.start(word - 1).plus(SLACK).isBefore(end);
        return !afterNext && !beforeLast;
    }

    private static double letters(PreparedWord word, String said) {
        String joined = said.replace(" ", "");
        return word.word().spoken().stream()
                .mapToDouble(form -> Likeness.share(String.join("", form), joined))
                .min()
                .orElse(1);
    }

    private static double sound(PreparedWord word, String said) {
        return word.word().spoken().stream()
                .mapToDouble(form -> SoundAlike.distance(String.join(" ", form), said))
                .min()
                .orElse(1);
    }

    private static List<String> texts(List<RecognizedWord> words) {
        return words.stream().map(RecognizedWord::text).toList();
    }
}
