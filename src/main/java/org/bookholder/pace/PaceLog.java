package org.bookholder.pace;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.timing.StreamTime;
import org.pcollections.HashTreePMap;
import org.pcollections.PMap;

/**
 * The data from which a session's pace is computed: running sums and the marks of the last seconds. Neither its size
 * nor the cost of a word grows with the session.
 *
 * <p>Reading time runs from a take's first word on, while the caller says so. The first word starts the clock and is
 * not counted: a rate is words per time between words.
 *
 * @param rules how pace is measured
 * @param take number of the take, 0 before the first
 * @param begun whether the take's first word has been read
 * @param clock reading time of the take
 * @param marks counts of the take's words at moments of its reading time: those within the window, and one before
 * @param takes what was read in each take
 * @param lesson sum of {@code takes}
 * @param articulated words of settled attempts and their time without pauses
 * @param band how the live pace compares with the target
 * @param figure the displayed live pace
 */
public record PaceLog(
        PaceRules rules,
        int take,
        boolean begun,
        StreamTime clock,
        List<Mark> marks,
        PMap<Integer, WordTally> takes,
        WordTally lesson,
        WordTally articulated,
        PaceBand band,
        SteadyFigure figure) {
    private static final double SECONDS_PER_MINUTE = 60;

    /**
     * A count of words.
     *
     * @param clock reading time of the take
     * @param words words counted in the take by then
     */
    record Mark(StreamTime clock, long words) {}

    /** Copies the list. */
    public PaceLog {
        marks = List.copyOf(marks);
    }

    /** Nothing read yet. */
    public static PaceLog begin(PaceRules rules) {
        return new PaceLog(
                rules,
                0,
                false,
                StreamTime.ZERO,
                List.of(),
                HashTreePMap.empty(),
                WordTally.NONE,
                WordTally.NONE,
                PaceBand.UNKNOWN,
                SteadyFigure.NONE);
    }

    /** Call when a take begins or ends: there is no live pace until words have been read in the take. */
    public PaceLog takeChanged(int number) {
        return with(number, false, StreamTime.ZERO, List.of(), takes, lesson, articulated);
    }

    /** Adds reading time. */
    public PaceLog advance(StreamTime length) {
        return begun ? with(take, true, clock.plus(length), marks, takes, lesson, articulated) : this;
    }

    /** Adds words read by now. */
    public PaceLog read(int words) {
        if (words <= 0) {
            return this;
        }
        if (!begun) {
            return with(take, true, clock, List.of(new Mark(clock, 0)), takes, lesson, articulated);
        }
        WordTally before = taken(take);
        WordTally after = new WordTally(before.words() + words, clock.ticks());
        return with(
                take, true, clock, marked(after.words()), takes.plus(take, after), change(before, after), articulated);
    }

    /** Replaces the estimate for a take by the exact figures. */
    public PaceLog settle(int number, WordTally exact) {
        return with(take, begun, clock, marks, takes.plus(number, exact), change(taken(number), exact), articulated);
    }

    /** Adds a settled attempt. */
    public PaceLog plus(PaceOfLine attempt) {
        return with(take, begun, clock, marks, takes, lesson, articulated.plus(attempt.articulated()));
    }

    /** Removes an attempt that was added before. */
    public PaceLog minus(PaceOfLine attempt) {
        return with(take, begun, clock, marks, takes, lesson, articulated.minus(attempt.articulated()));
    }

    /** The same with the band and the displayed figure brought up to date. */
    public PaceLog shown(int target) {
        double live = live();
        PaceBand nextBand = band.next(live, target, rules.tolerance());
        SteadyFigure nextFigure = figure.next(live, rules.step());
        return nextBand == band && nextFigure.equals(figure)
                ? this
                : new PaceLog(rules, take, begun, clock, marks, takes, lesson, articulated, nextBand, nextFigure);
    }

    /** The current pace at a position in a script's text, against the pace that its settings aim at. */
    public PaceReading reading(WordCounts script, ReadingPosition position, ScriptSettings settings) {
        return reading(script.length(position), script.length(), settings.targetPace());
    }

    /**
     * The current pace.
     *
     * @param before the text before the reading position
     * @param all the text of the script
     * @param target words per minute
     */
    public PaceReading reading(TextLength before, TextLength all, int target) {
        double measured = lesson.perMinute(rules.fewest());
        StreamTime left = left(before, all, target);
        double blend = RunningTime.blend(lesson, target, rules.prior());
        StreamTime done = RunningTime.of(before.words(), Double.isNaN(measured) || measured <= 0 ? blend : measured);
        return new PaceReading(
                live(), measured, articulated.perMinute(rules.fewest()), done.plus(left), left, band, figure.shown());
    }

    /**
     * Time for the text that is left. The target counts as some words that were read at it, and less and less until half of the text was
     * read: what is known of the reader then tells more.
     */
    private StreamTime left(TextLength before, TextLength all, int target) {
        double usual = all.density(0);
        double read = lesson.words() * before.density(usual);
        double fades = Math.max(0, 1 - 2.0 * lesson.words() / Math.max(1, all.words()));
        double atTarget = lesson.words() < rules.fewest() ? rules.prior() : rules.prior() * fades;
        if (usual == 0) {
            return StreamTime.ZERO;
        }
        double seconds = lesson.ticks() / (double) StreamTime.TICKS_PER_SECOND + atTarget * SECONDS_PER_MINUTE / target;
        return StreamTime.ofSeconds(all.minus(before).weight() * seconds / (read + atTarget * usual));
    }

    private double live() {
        if (marks.isEmpty()) {
            return Double.NaN;
        }
        StreamTime from = clock.since(rules.window());
        long earlier = 0;
        for (Mark mark : marks) {
            if (!from.isBefore(mark.clock())) {
                earlier = mark.words();
            }
        }
        long words = marks.get(marks.size() - 1).words() - earlier;
        return WordTally.of(words, clock.since(from)).perMinute(rules.fewest());
    }

    /** The marks with a new one added and those that are too old removed. */
    private List<Mark> marked(long words) {
        StreamTime from = clock.since(rules.window());
        List<Mark> kept = new ArrayList<>(marks.size() + 1);
        for (int i = 0; i < marks.size(); i++) {
            boolean replaced =
                    marks.get(i).clock().equals(clock) && marks.get(i).words() > 0;
            boolean past =
                    i + 1 < marks.size() && !from.isBefore(marks.get(i + 1).clock());
            if (!replaced && !past) {
                kept.add(marks.get(i));
            }
        }
        kept.add(new Mark(clock, words));
        return kept;
    }

    private WordTally taken(int number) {
        WordTally tally = takes.get(number);
        return tally == null ? WordTally.NONE : tally;
    }

    private WordTally change(WordTally before, WordTally after) {
        return lesson.minus(before).plus(after);
    }

    private PaceLog with(
            int take,
            boolean begun,
            StreamTime clock,
            List<Mark> marks,
            PMap<Integer, WordTally> takes,
            WordTally lesson,
            WordTally articulated) {
        return new PaceLog(rules, take, begun, clock, marks, takes, lesson, articulated, band, figure);
    }
}
