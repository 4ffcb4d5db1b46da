package org.bookholder.follow.judge;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.follow.graph.PathSpan;
import org.bookholder.follow.graph.PathStep;
import org.bookholder.follow.graph.PathStep.Kind;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.follow.model.WordTime;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.timing.StreamTime;

/**
 * The words of one line as the script ear heard them in one reading; for a word that was repeated, the last time
 * counts.
 */
final class HeardLine {
    /** The share of a line's words that may be missing at one end while the line still counts as read to that end. */
    private static final double MISSING = 0.15;

    private final ReadingGraph graph;
    private final int first;
    private final StreamTime[] start;
    private final StreamTime[] end;
    private final boolean[] matched;
    private final String[] form;

    HeardLine(ReadingGraph graph, PathSpan span) {
        this.graph = graph;
        first = graph.firstWord(span.line());
        int length = graph.firstWord(span.line() + 1) - first;
        start = new StreamTime[length];
        end = new StreamTime[length];
        matched = new boolean[length];
        form = new String[length];
        for (PathStep step : span.steps()) {
            if (step.node() >= 0) {
                hear(step);
            }
        }
    }

    private void hear(PathStep step) {
        int word = graph.wordOf(step.node()) - first;
        boolean within = step.before() != null && graph.insideWord(step.before().place());
        if (!within) {
            start[word] = PathSpan.token(step).start();
            matched[word] = true;
        }
        String token = graph.tokenText(step.node());
        form[word] = within && form[word] != null ? form[word] + " " + token : token;
        end[word] = PathSpan.token(step).end();
        matched[word] &= step.kind() == Kind.MATCH;
    }

    int length() {
        return start.length;
    }

    /** Whether the script ear heard the word as written. */
    boolean matched(int word) {
        return matched[word];
    }

    /** Whether the script ear heard every part of one of the ways to say the word; figures have many parts. */
    boolean whole(int word) {
        String parts = form[word];
        return matched[word]
                && parts != null
                && graph.word(first + word).forms().stream()
                        .anyMatch(way -> String.join(" ", way).equals(parts));
    }

    /**
     * The stretch of a take that the reading covers: its words, extended to voice that joins them without a pause if
     * they seem to begin late or end early.
     *
     * @param after when the reading before it ends
     * @param before when the reading after it begins
     */
    Loudness.Stretch said(Loudness loudness, PathSpan span, StreamTime after, StreamTime before) {
        StreamTime begin = span.start();
        StreamTime finish = span.end();
        int from = firstMatched();
        if (from < length() && missing(0, from) > allowed()) {
            begin = StreamTime.min(begin, loudness.voiceSince(start[from], after));
        }
        if (from < length() && missing(lastMatched() + 1, length()) > allowed()) {
            finish = StreamTime.max(finish, loudness.voiceUntil(end[lastMatched()], before));
        }
        return new Loudness.Stretch(begin, finish);
    }

    /** What was said, and whether its first and last word are those of the line. */
    Loudness.Words outermost(Loudness.Stretch said) {
        return new Loudness.Words(said.start(), said.end(), matched(0), matched(length() - 1));
    }

    /**
     * Whether the reading begins at the line's beginning and reaches its end. Words there that were not heard as
     * written were at least said if there is voice for about as long as they take.
     *
     * @param cutOff whether the sound ends while the reader is speaking: then the line was said only if its last word
     *     was heard
     */
    boolean complete(Loudness.Stretch said, boolean cutOff) {
        int from = firstMatched();
        if (from == length()) {
            return false;
        }
        int to = lastMatched();
        boolean begun =
                missing(0, from) <= allowed() || start[from].since(said.start()).compareTo(shortest(0, from)) >= 0;
        int left = missing(to + 1, length());
        if (cutOff) {
            return begun && left == 0;
        }
        return begun && (left <= allowed() || said.end().since(end[to]).compareTo(shortest(to + 1, length())) >= 0);
    }

    private int allowed() {
        return Math.max(1, (int) (MISSING * length()));
    }

    private int firstMatched() {
        int word = 0;
        while (word < length() && !matched[word]) {
            word++;
        }
        return word;
    }

    private int lastMatched() {
        int word = length() - 1;
        while (word > 0 && !matched[word]) {
            word--;
        }
        return word;
    }

    private int missing(int from, int to) {
        int count = 0;
        for (int word = from; word < to; word++) {
            count += graph.word(first + word).standIn() || graph.unhearable(first + word) ? 0 : 1;
        }
        return count;
    }

    /** The shortest time in which these words can be said. */
    private StreamTime shortest(int from, int to) {
        double seconds = 0;
        for (int word = from; word < to; word++) {
            seconds += graph.shortest(first + word);
        }
        return StreamTime.ofSeconds(seconds);
    }

    /** The time at which a heard word begins. */
    StreamTime start(int word) {
        return start[word];
    }

    /** The time at which a heard word ends. */
    StreamTime end(int word) {
        return end[word];
    }

    /** The form in which a word was said; empty if it has no choice of forms. */
    private String said(int word) {
        PreparedWord prepared = graph.word(first + word);
        boolean told = matched[word] && !prepared.standIn() && prepared.word().hasChoice();
        return told ? form[word] : "";
    }

    /** The times of all words for which something was heard. */
    List<WordTime> times() {
        List<WordTime> times = new ArrayList<>();
        for (int word = 0; word < length(); word++) {
            if (start[word] != null && end[word] != null && !end[word].isBefore(start[word])) {
                times.add(new WordTime(word + 1, start[word], end[word], said(word)));
            }
        }
        return times;
    }
}
