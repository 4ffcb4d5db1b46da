package org.bookholder.bench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Compares findings about composed readings with what happened in them; counts and measures of several readings add up.
 * {@code docs/accuracy.md} defines each.
 */
final class Score {
    /** Counts lines: those of a kind, and those that were found. */
    static final class Share {
        private int found;
        private int all;

        void count(boolean isFound) {
            all++;
            found += isFound ? 1 : 0;
        }

        void add(Share other) {
            found += other.found;
            all += other.all;
        }

        int found() {
            return found;
        }

        int all() {
            return all;
        }

        /** From 0 to 1; not a number if there is nothing to find. */
        double value() {
            return (double) found / all;
        }

        @Override
        public String toString() {
            return found + " of " + all;
        }
    }

    /** Measured lengths of time, in seconds. */
    static final class Lengths {
        private final List<Double> values = new ArrayList<>();

        void add(double seconds) {
            values.add(seconds);
        }

        void add(Lengths other) {
            values.addAll(other.values);
        }

        boolean isEmpty() {
            return values.isEmpty();
        }

        /** The smallest value that at least {@code share} of all do not exceed; not a number if there is none. */
        double quantile(double share) {
            if (values.isEmpty()) {
                return Double.NaN;
            }
            List<Double> sorted = new ArrayList<>(values);
            Collections.sort(sorted);
            return sorted.get(Math.max(0, (int) Math.ceil(share * sorted.size()) - 1));
        }
    }

    /** Lines skipped or broken off, and called one or the other. */
    final Share lostFound = new Share();
    /** Lines rightly reported as skipped or incomplete. */
    final Share lostTrue = new Share();

    final Share swapped = new Share();
    final Share dropped = new Share();
    final Share added = new Share();
    /** Clean lines reported as anything else. */
    final Share wronglyCalled = new Share();

    final Share retakes = new Share();
    /** Lines read once that are said to have been read more often. */
    final Share falseRetakes = new Share();
    /** Clean lines whose best attempt is the last complete one. */
    final Share bestRight = new Share();

    final Lengths bounds = new Lengths();
    final Share asides = new Share();
    final Share onLine = new Share();
    /** The same, with the next line's first word counted as right while the last one may be ending. */
    final Share onLineOrNext = new Share();

    final Lengths next = new Lengths();
    final Lengths jump = new Lengths();
    /** Asides after which the position is elsewhere. */
    final Share carriedOff = new Share();

    final Share neverReached = new Share();
    int falseAsides;
    double seconds;

    /** Swapped, dropped and added words together. */
    Share misread() {
        Share all = new Share();
        all.add(swapped);
        all.add(dropped);
        all.add(added);
        return all;
    }

    void add(Score other) {
        lostFound.add(other.lostFound);
        lostTrue.add(other.lostTrue);
        swapped.add(other.swapped);
        dropped.add(other.dropped);
        added.add(other.added);
        wronglyCalled.add(other.wronglyCalled);
        retakes.add(other.retakes);
        falseRetakes.add(other.falseRetakes);
        bestRight.add(other.bestRight);
        bounds.add(other.bounds);
        asides.add(other.asides);
        onLine.add(other.onLine);
        onLineOrNext.add(other.onLineOrNext);
        next.add(other.next);
        jump.add(other.jump);
        carriedOff.add(other.carriedOff);
        neverReached.add(other.neverReached);
        falseAsides += other.falseAsides;
        seconds += other.seconds;
    }
}
