package org.bookholder.handoff.captions;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.timing.StreamTime;

/** Breaks a line's words into captions, and a caption into rows, at the best phrase breaks. */
final class CaptionBreaker {
    private static final double IMPOSSIBLE = 1e9;

    /** Penalty for one more caption: a little less than for breaking a phrase. */
    private static final double ONE_MORE = 8;

    /** Penalty for a leftover caption of one or two words. */
    private static final double CRUMB = 10;

    /** Penalty for a caption that stands no time at all; in proportion for one that stands too short. */
    private static final double HURRY = 60;

    /** Breaking costs nothing where the speaker pauses for at least this long. */
    private static final StreamTime PAUSE = StreamTime.ofSeconds(0.35);

    private final CaptionRules rules;

    CaptionBreaker(CaptionRules rules) {
        this.rules = rules;
    }

    /**
     * The captions of one line, in order, each as the list of its words.
     *
     * @param next when the next line begins, if there is one
     */
    List<List<TimedWord>> captions(List<TimedWord> words, Optional<StreamTime> next) {
        StreamTime end = words.get(words.size() - 1).end().plus(rules.linger());
        StreamTime until = next.map(begins -> StreamTime.min(begins, end)).orElse(end);
        int count = words.size();
        double[] cost = new double[count + 1];
        int[] from = new int[count + 1];
        for (int to = 1; to <= count; to++) {
            cost[to] = Double.MAX_VALUE;
            for (int start = to - 1; start >= 0 && (start == to - 1 || fits(words.subList(start, to))); start--) {
                double total = cost[start] + costOf(words, start, to) + hurry(words, start, to, until);
                if (total < cost[to]) {
                    cost[to] = total;
                    from[to] = start;
                }
            }
        }
        List<List<TimedWord>> captions = new ArrayList<>();
        for (int to = count; to > 0; to = from[to]) {
            captions.add(words.subList(from[to], to));
        }
        Collections.reverse(captions);
        return captions;
    }

    /** A caption's rows: one if it fits, otherwise two of about the same length, broken between phrases. */
    List<String> rows(List<TimedWord> words) {
        String whole = join(words);
        if (whole.length() <= rules.width()) {
            return List.of(whole);
        }
        int best = -1;
        double least = Double.MAX_VALUE;
        for (int i = 1; i < words.size(); i++) {
            double cost = rowCost(words, i);
            if (cost < least) {
                least = cost;
                best = i;
            }
        }
        return best < 0
                ? List.of(whole)
                : List.of(join(words.subList(0, best)), join(words.subList(best, words.size())));
    }

    private double costOf(List<TimedWord> words, int start, int end) {
        double breaking = end == words.size() ? 0 : breakCost(words, end);
        boolean crumb = end - start <= 2 && end - start < words.size();
        return ONE_MORE + breaking + (crumb ? CRUMB : 0) + unevenness(words, start, end);
    }

    /** Penalty for uneven captions: one long caption costs more than two even ones. */
    private double unevenness(List<TimedWord> words, int start, int end) {
        double fill = (double) join(words.subList(start, end)).length() / (rules.width() * rules.rows());
        return 2 * fill * fill;
    }

    /** Penalty for a caption that is gone before it can be read. */
    private double hurry(List<TimedWord> words, int start, int end, StreamTime until) {
        StreamTime gone = end < words.size() ? words.get(end).start() : until;
        double needed = needed(words.subList(start, end)).seconds();
        double there = gone.since(words.get(start).start()).seconds();
        return HURRY * Math.max(0, needed - there) / needed;
    }

    /** How long the reader of a caption needs. */
    StreamTime needed(List<TimedWord> words) {
        long byWords = words.size() * rules.perWord().ticks();
        long byCharacters = (long) join(words).length() * StreamTime.TICKS_PER_SECOND / rules.perSecond();
        return new StreamTime(Math.max(rules.shortest().ticks(), Math.max(byWords, byCharacters)));
    }

    private static double breakCost(List<TimedWord> words, int at) {
        TimedWord before = words.get(at - 1);
        TimedWord after = words.get(at);
        boolean pause = after.start().since(before.end()).compareTo(PAUSE) >= 0;
        return pause ? 0 : SenseBreaks.cost(before.text(), after.text());
    }

    private boolean fits(List<TimedWord> words) {
        StreamTime length = words.get(words.size() - 1).end().since(words.get(0).start());
        return length.compareTo(rules.longest()) <= 0
                && rows(words).stream().allMatch(row -> row.length() <= rules.width());
    }

    private double rowCost(List<TimedWord> words, int at) {
        int first = join(words.subList(0, at)).length();
        int second = join(words.subList(at, words.size())).length();
        double tooLong = Math.max(first, second) > rules.width() ? IMPOSSIBLE : 0;
        double uneven = Math.abs(first - second) / (double) rules.width();
        return tooLong
                + SenseBreaks.cost(words.get(at - 1).text(), words.get(at).text())
                + 6 * uneven * uneven;
    }

    private static String join(List<TimedWord> words) {
        return words.stream().map(TimedWord::text).collect(Collectors.joining(" "));
    }
}
