package org.bookholder.follow;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.bookholder.follow.Deviation.Kind;
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
    private static final StreamTime MARGIN = StreamTime.ofSeconds(0.12);

    /** Function words that recognisers swallow or swap so often that their loss is no evidence. */
    private static final Set<String> SLIGHT = Set.of(
            "a", "an", "the", "and", "or", "but", "nor", "so", "as", "if", "of", "to", "in", "on", "at", "by", "for",
            "up", "is", "am", "are", "was", "be", "it", "its", "it's", "he", "she", "we", "you", "i", "me", "my", "his",
            "her", "him", "our", "us", "do", "did", "has", "had", "can", "may", "not", "no", "all", "too", "off", "out",
            "who", "how", "any", "let", "get", "got", "i'm", "i'd");

    private final ReadingGraph graph;
    private final OpenWords open;

    AttemptJudge(ReadingGraph graph, OpenWords open) {
        this.graph = graph;
        this.open = open;
    }

    /** Judges a reading of a line that sounds from the {@code bounds}' start to their end. */
    Attempt judge(Span span, int take, int ordinal, Loudness.Stretch bounds) {
        Heard heard = new Heard(graph, span);
        boolean complete = heard.complete();
        return new Attempt(
                take,
                ordinal,
                span.line() + 1,
                bounds.start(),
                bounds.end(),
                complete,
                heard.times(),
                complete ? deviations(span, heard) : List.of());
    }

    private List<Deviation> deviations(Span span, Heard heard) {
        List<Deviation> result = new ArrayList<>();
        for (int word = 0; word < heard.length(); word++) {
            Deviation deviation = heard.matched(word) ? null : deviation(span, heard, word);
            if (deviation != null) {
                result.add(deviation);
            }
        }
        return result;
    }

    private @Nullable Deviation deviation(Span span, Heard heard, int word) {
        var prepared = graph.word(graph.firstWord(span.line()) + word);
        String plain = prepared.word().plain();
        if (prepared.standIn()
                || prepared.forms().isEmpty()
                || SLIGHT.contains(plain.toLowerCase(Locale.ROOT).replace('’', '\''))) {
            return null;
        }
        StreamTime from = heard.endBefore(word);
        StreamTime to = heard.startAfter(word);
        List<String> near = texts(open.between(from.since(MARGIN), to.plus(MARGIN)));
        boolean heardByOpen = prepared.forms().stream().anyMatch(f -> Likeness.contains(near, f))
                || prepared.word().spoken().stream().anyMatch(f -> Likeness.contains(near, f));
        if (heardByOpen) {
            return null;
        }
        String said = String.join(" ", texts(open.between(from, to)));
        return new Deviation(word + 1, plain, said, said.isEmpty() ? Kind.DROPPED : Kind.SWAPPED, 0.9);
    }

    private static List<String> texts(List<RecognizedWord> words) {
        return words.stream().map(RecognizedWord::text).toList();
    }
}
