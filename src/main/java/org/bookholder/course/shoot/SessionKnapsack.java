package org.bookholder.course.shoot;

import java.util.Arrays;
import java.util.BitSet;

/**
 * Finds the most that one session can hold. The result is exact: for each amount of reading it keeps the set of tasks
 * with the fewest breaks, and no other set matters ({@link Breaks}).
 */
final class SessionKnapsack {
    private static final int NO_WAY = Integer.MAX_VALUE;

    private final int[] minutes;
    private final Breaks breaks;

    /** Creates one for tasks of these lengths, in the order in which a session reads them. */
    SessionKnapsack(int[] minutes, Breaks breaks) {
        this.minutes = minutes;
        this.breaks = breaks;
    }

    /**
     * The set of remaining tasks with the most reading in total that fits into one session.
     *
     * @param left indices of the remaining tasks
     * @param room minutes for reading and breaks
     * @param reading the most minutes of reading
     */
    BitSet works(BitSet left, int room, int reading) {
        int most = Math.max(0, Math.min(room, reading));
        int[] far = new int[most + 1];
        Arrays.fill(far, NO_WAY);
        far[0] = Breaks.NOTHING_READ;
        BitSet[] with = new BitSet[minutes.length];
        for (int i = left.nextSetBit(0); i >= 0; i = left.nextSetBit(i + 1)) {
            with[i] = new BitSet();
            for (int sum = most; sum >= minutes[i]; sum--) {
                int before = far[sum - minutes[i]];
                int after = before == NO_WAY ? NO_WAY : breaks.read(before, minutes[i]);
                if (after < far[sum] && breaks.lasting(after, sum) <= room) {
                    far[sum] = after;
                    with[i].set(sum);
                }
            }
        }
        int sum = most;
        while (far[sum] == NO_WAY) {
            sum--;
        }
        BitSet found = new BitSet();
        for (int i = left.length() - 1; i >= 0; i--) {
            if (left.get(i) && with[i].get(sum)) {
                found.set(i);
                sum -= minutes[i];
            }
        }
        return found;
    }

    /** The most minutes that are read in one session; room and reading as for {@link #works}. */
    int most(int room, int reading) {
        BitSet all = new BitSet();
        all.set(0, minutes.length);
        return minutes(works(all, room, reading));
    }

    private int minutes(BitSet works) {
        return works.stream().map(i -> minutes[i]).sum();
    }

    /** The most tasks that one session can hold; room and reading as for {@link #works}. */
    int count(int room, int reading) {
        int most = Math.max(0, Math.min(room, reading));
        int[][] far = new int[minutes.length + 1][most + 1];
        for (int[] row : far) {
            Arrays.fill(row, NO_WAY);
        }
        far[0][0] = Breaks.NOTHING_READ;
        int highest = 0;
        for (int length : minutes) {
            for (int count = highest; count >= 0; count--) {
                for (int sum = most - length; sum >= 0; sum--) {
                    int before = far[count][sum];
                    int after = before == NO_WAY ? NO_WAY : breaks.read(before, length);
                    if (after < far[count + 1][sum + length] && breaks.lasting(after, sum + length) <= room) {
                        far[count + 1][sum + length] = after;
                        highest = Math.max(highest, count + 1);
                    }
                }
            }
        }
        return highest;
    }
}
