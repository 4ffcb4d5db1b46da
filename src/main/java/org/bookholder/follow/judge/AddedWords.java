package org.bookholder.follow.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.bookholder.follow.evidence.OpenAlignment;
import org.bookholder.follow.evidence.OpenAlignment.Extra;
import org.bookholder.follow.graph.PathSpan;
import org.bookholder.follow.graph.PathStep;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Deviation.Kind;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.pronounce.SoundAlike;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * Finds words that were read and are not in the line: both ears heard something between two words that both heard as
 * written (a function word beside it may have been swallowed), and it is neither a repetition or what a repetition put
 * right, nor a filler, nor a piece of a word beside it.
 */
final class AddedWords {
    private static final StreamTime SLACK = StreamTime.ofSeconds(0.08);
    private static final StreamTime SHORTEST = StreamTime.ofSeconds(0.12);
    private static final double REPEATED = 0.34;

    /** How far, by sound, what was heard for a word that no ear knows may be from it for the word to be read and its place known. */
    private static final double LIKE_UNKNOWN = 0.4;

    private static final Set<String> FILLERS = Set.of("uh", "um", "er", "ah", "eh", "oh", "hm", "hmm", "mm", "huh");

    private final List<PreparedWord> words;
    private final HeardLine heard;
    private final OpenAlignment alignment;

    AddedWords(List<PreparedWord> words, HeardLine heard, OpenAlignment alignment) {
        this.words = words;
        this.heard = heard;
        this.alignment = alignment;
    }

    /** The added words of a reading, each at the place of the word that it comes before. */
    List<Deviation> find(PathSpan span) {
        List<Deviation> added = new ArrayList<>();
        for (Extra extra : alignment.extras()) {
            if (isAdded(span, extra)) {
                added.add(new Deviation(
                        extra.after() + 1,
                        "",
                        extra.word().text(),
                        Kind.ADDED,
                        extra.word().confidence()));
            }
        }
        return added;
    }

    private boolean isAdded(PathSpan span, Extra extra) {
        int next = extra.after();
        int last = next - 1;
        int from = pastFunctionWord(last, -1);
        int to = pastFunctionWord(next, 1);
        return anchored(from)
                && anchored(to)
                && !FILLERS.contains(extra.word().text())
                && between(extra.word(), end(from), start(to))
                && heardByScriptEar(span, extra.word())
                && !repeats(extra.word().text(), last, next)
                && !repaired(next);
    }

    /**
     * Whether the reader, having said something wrong between two words, went back and said it right: of what was heard
     * too much there, the end is said again after it or the beginning was said before it ("beside the window, beside the
     * brake").
     */
    private boolean repaired(int next) {
        List<Extra> run =
                alignment.extras().stream().filter(e -> e.after() == next).toList();
        if (run.size() < 2) {
            return false;
        }
        String first = run.get(0).word().text();
        String last = run.get(run.size() - 1).word().text();
        return said(next, first) || said(next - 1, last);
    }

    private boolean said(int word, String text) {
        return words.get(word).word().spoken().stream().anyMatch(form -> form.equals(List.of(text)));
    }

    /** The word itself, or if it is a function word that was swallowed the one after it in a direction. */
    private int pastFunctionWord(int word, int direction) {
        return exists(word) && FunctionWords.contains(words.get(word)) && !anchored(word) ? word + direction : word;
    }

    private boolean exists(int word) {
        return word >= 0 && word < words.size();
    }

    /** Whether a word is known to have been read as written, and where. */
    private boolean anchored(int word) {
        if (!exists(word) || alignment.counterpart(word).isEmpty()) {
            return false;
        }
        return words.get(word).standIn()
                ? heard.matched(word) && AttemptJudge.sound(words.get(word), alignment.said(word)) <= LIKE_UNKNOWN
                : heard.matched(word) || alignment.exact(word);
    }

    private StreamTime start(int word) {
        return heard.matched(word)
                ? heard.start(word)
                : alignment.counterpart(word).get(0).start();
    }

    private StreamTime end(int word) {
        List<RecognizedWord> counterpart = alignment.counterpart(word);
        return heard.matched(word)
                ? heard.end(word)
                : counterpart.get(counterpart.size() - 1).end();
    }

    private static boolean between(RecognizedWord word, StreamTime from, StreamTime to) {
        return !word.start().plus(SLACK).isBefore(from) && !to.plus(SLACK).isBefore(word.end());
    }

    /** Whether the script ear heard something there that is no word of the line. */
    private static boolean heardByScriptEar(PathSpan span, RecognizedWord word) {
        long overlap = 0;
        for (PathStep step : span.steps()) {
            if (step.kind() != PathStep.Kind.MATCH) {
                RecognizedWord token = PathSpan.token(step);
                overlap += Math.max(
                        0,
                        Math.min(token.end().ticks(), word.end().ticks())
                                - Math.max(token.start().ticks(), word.start().ticks()));
            }
        }
        return overlap >= SHORTEST.ticks();
    }

    /** Whether it is a word beside it said again, or a piece of one. */
    private boolean repeats(String text, int last, int next) {
        return alike(text, last) || alike(text, next);
    }

    private boolean alike(String text, int word) {
        for (List<String> form : words.get(word).word().spoken()) {
            String spoken = String.join(" ", form);
            if (spoken.startsWith(text) || spoken.endsWith(text) || SoundAlike.distance(spoken, text) <= REPEATED) {
                return true;
            }
        }
        return false;
    }
}
