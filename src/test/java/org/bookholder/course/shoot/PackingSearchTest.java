package org.bookholder.course.shoot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.bookholder.course.shoot.PackingSearch.Answer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Long courses, of which it is known beforehand whether all lessons can be placed. */
final class PackingSearchTest {
    private static final Breaks BREAKS = new Breaks(35, 10);
    private static final int READING = 120;

    /**
     * Courses made by splitting a plan without a spare minute into lessons: a solution exists, and it is hard to find.
     * With forty lessons and more, one course in twenty-five may be reported as not found; none may be reported as
     * impossible.
     */
    @ParameterizedTest
    @ValueSource(ints = {20, 30, 40, 60})
    void findsAPlanWhoseExistenceIsKnown(int lessons) {
        int found = 0;
        for (int seed = 1; seed <= 25; seed++) {
            Planted planted = new Planted(lessons, new Random(31L * lessons + seed));
            PackingSearch search = new PackingSearch(planted.minutes, BREAKS, READING);
            Answer answer = search.search(planted.rooms);
            assertThat(answer).isNotEqualTo(Answer.NONE);
            if (answer == Answer.FOUND) {
                found++;
                eachLessonHasAPlace(search.found(), planted);
            }
        }
        assertThat(found).isGreaterThanOrEqualTo(lessons <= 30 ? 25 : 24);
    }

    private static void eachLessonHasAPlace(List<BitSet> found, Planted planted) {
        assertThat(found.stream().flatMapToInt(BitSet::stream).sorted().boxed())
                .containsExactlyElementsOf(
                        IntStream.range(0, planted.minutes.length).boxed().toList());
        List<Integer> lasting = new ArrayList<>(
                found.stream().map(works -> lasting(works, planted.minutes)).toList());
        List<Integer> rooms = new ArrayList<>(planted.rooms);
        lasting.sort(Collections.reverseOrder());
        rooms.sort(Collections.reverseOrder());
        for (int i = 0; i < lasting.size(); i++) {
            assertThat(lasting.get(i)).isLessThanOrEqualTo(rooms.get(i));
        }
    }

    private static int lasting(BitSet works, int[] minutes) {
        int far = Breaks.NOTHING_READ;
        int sum = 0;
        for (int work : works.stream().toArray()) {
            far = BREAKS.read(far, minutes[work]);
            sum += minutes[work];
        }
        assertThat(sum).isLessThanOrEqualTo(READING);
        return BREAKS.lasting(far, sum);
    }

    /** Five lessons of 22 minutes fill a day of 150 minutes with their breaks, and a day of 120 holds four. */
    @Test
    void provesThatNoPlanExists() {
        int[] lessons = new int[30];
        Arrays.fill(lessons, 22);
        PackingSearch search = new PackingSearch(lessons, BREAKS, READING);
        assertThat(search.search(Collections.nCopies(6, 150))).isEqualTo(Answer.FOUND);
        assertThat(search.search(List.of(150, 150, 150, 150, 150, 120))).isEqualTo(Answer.NONE);
    }

    /** A course and the rooms that hold it. */
    private static final class Planted {
        final List<Integer> rooms = new ArrayList<>();
        final int[] minutes;

        Planted(int lessons, Random random) {
            List<Integer> order =
                    new ArrayList<>(IntStream.range(0, lessons).boxed().toList());
            Collections.shuffle(order, random);
            minutes = random.ints(lessons, 5, 36).toArray();
            int next = 0;
            while (next < lessons) {
                int wanted = 60 + random.nextInt(61);
                BitSet session = new BitSet();
                int sum = 0;
                while (next < lessons && sum + minutes[order.get(next)] <= wanted) {
                    sum += minutes[order.get(next)];
                    session.set(order.get(next++));
                }
                rooms.add(lasting(session, minutes));
            }
        }
    }
}
