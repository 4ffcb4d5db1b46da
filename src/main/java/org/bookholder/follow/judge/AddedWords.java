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
 * Finds words that were read although they are not in the line. Both ears must have heard something between two words
 * that both heard as written (a function word next to it may have been swallowed). It must not be a repetition, a slip
 * that a repetition corrected, a filler, or a piece of a neighbouring word.
 */
final class AddedWords {
    private static final StreamTime SLACK = StreamTime.ofSeconds(0.08);
    private static final StreamTime SHORTEST = StreamTime.ofSeconds(0.12);
    private static final double REPEATED = 0.34;

    /**
     * For a word that neither ear knows: the greatest distance by sound at which what was heard still counts as that
     * word, so that its place is known.
     */
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
     * Whether the reader said something wrong between two words, then went back and corrected it: the end of the extra
     * words is said again after them, or their beginning was said before them ("beside the window, beside the brake").
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

    /** The word itself, or the next one in a direction if it is a function word that was swallowed. */
    private int pastFunctionWord(int word, int direction) {
        return exists(word) && FunctionWords.contains(words.get(word)) && !anchored(word) ? word + direction : word;
    }

    private boolean exists(int word) {
        return word >= 0 && word < words.size();
    }

    /** Whether a word is known to have been read as written, and at which time. */
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

    /** Whether the script ear also heard something there that is not a word of the line. */
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

    /** Whether it repeats a neighbouring word or a piece of one. */
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
