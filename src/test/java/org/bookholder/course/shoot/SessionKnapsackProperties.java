package org.bookholder.course.shoot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.BitSet;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

final class SessionKnapsackProperties {
    /** Held against all that could be read in a session, tried one after another. */
    @Property(tries = 300)
    void noLessonCouldBeAdded(
            @ForAll @Size(min = 1, max = 9) List<@IntRange(min = 1, max = 60) Integer> works,
            @ForAll @IntRange(min = 0, max = 200) int room,
            @ForAll @IntRange(min = 1, max = 150) int reading,
            @ForAll @IntRange(min = 5, max = 50) int stretch) {
        int[] minutes = works.stream().mapToInt(Integer::intValue).toArray();
        Breaks breaks = new Breaks(stretch, 10);
        int most = 0;
        int count = 0;
        for (int way = 0; way < 1 << minutes.length; way++) {
            BitSet read = BitSet.valueOf(new long[] {way});
            if (holds(read, minutes, breaks, room, reading)) {
                most = Math.max(most, read.stream().map(i -> minutes[i]).sum());
                count = Math.max(count, read.cardinality());
            }
        }

        SessionKnapsack fullest = new SessionKnapsack(minutes, breaks);

        assertThat(fullest.most(room, reading)).isEqualTo(most);
        assertThat(fullest.count(room, reading)).isEqualTo(count);
        BitSet all = new BitSet();
        all.set(0, minutes.length);
        assertThat(holds(fullest.works(all, room, reading), minutes, breaks, room, reading))
                .isTrue();
    }

    private static boolean holds(BitSet read, int[] minutes, Breaks breaks, int room, int reading) {
        int far = Breaks.NOTHING_READ;
        int sum = 0;
        for (int work : read.stream().toArray()) {
            far = breaks.read(far, minutes[work]);
            sum += minutes[work];
        }
        return sum <= reading && (sum == 0 || breaks.lasting(far, sum) <= room);
    }
}
