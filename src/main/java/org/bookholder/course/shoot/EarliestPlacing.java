package org.bookholder.course.shoot;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.bookholder.course.ReadingOrder;
import org.jspecify.annotations.Nullable;

/**
 * Places tasks so that as little as possible is left over, the last of them is recorded early, and few sessions are
 * needed, in this order; then that little is set up for other kinds of lessons. It fills the days in five simple ways and takes the best; of
 * equal ones the one that keeps the tasks in order. If the order is not free, there is only one way. Then it sees which days can be spared.
 * Confined to one thread.
 */
final class EarliestPlacing {
    private static final Comparator<Assignment> BETTER = Comparator.comparingInt(Assignment::minutesLeft)
            .thenComparingInt(Assignment::lastDay)
            .thenComparingInt(Assignment::used)
            .thenComparingInt(Assignment::setUps);

    /** How often a task is placed in trying other orders; takes some tenths of a second. */
    private static final int STEPS = 20_000;

    /** The same while it is tried whether a day can be spared, for each day. */
    private static final int STEPS_WITHOUT_A_DAY = STEPS / 10;

    /** Any number: the same course has the same plan each time. */
    private static final long SEED = 1;

    private final SessionCapacities rooms;
    private final List<RecordingTask> works;
    private final Assignment nothing;

    /** The tasks that are parts of lessons, in order. */
    private final List<RecordingTask> parts;

    /** No placing of all tasks needs fewer sessions. */
    private final int fewest;

    private final Map<Space, BitSet> fullest = new HashMap<>();

    /** Tasks, by their places in the order in which they are read, and the minutes that a day has for them. */
    private record Space(BitSet left, int room) {}

    private EarliestPlacing(SessionCapacities rooms, List<RecordingTask> works) {
        this.rooms = rooms;
        this.works = works;
        this.nothing = new Assignment(rooms);
        this.parts = works.stream().filter(work -> !work.inOne()).toList();
        this.fewest = rooms.fewest(works);
    }

    /** Places tasks, given in the order in which they are to be recorded. */
    static Assignment of(SessionCapacities rooms, List<RecordingTask> works) {
        EarliestPlacing placing = new EarliestPlacing(rooms, works);
        BitSet open = new BitSet();
        open.set(0, rooms.days());
        Assignment best = placing.best(open);
        return placing.spared(placing.isFree() ? placing.shuffled(best, open, STEPS) : best, open);
    }

    /** The same, or what is better in any of many orders: every way of placing all tasks is the first fit of some order. */
    private Assignment shuffled(Assignment known, BitSet open, int steps) {
        Random random = new Random(SEED);
        List<RecordingTask> order = new ArrayList<>(works);
        Assignment best = known;
        for (int i = 0; i < steps / works.size() && (!best.left().isEmpty() || best.lastDay() >= fewest); i++) {
            Collections.shuffle(order, random);
            Assignment one = firstFit(order, open);
            if (keepsParts(one) && BETTER.compare(one, best) < 0) {
                best = one;
            }
        }
        return best;
    }

    private Assignment best(BitSet open) {
        if (!isFree()) {
            return inOrder(open);
        }
        // The first of equal ones.
        return Stream.of(
                        inOrder(open),
                        firstFit(works, open),
                        firstFit(byKind(), open),
                        firstFit(longestFirst(), open),
                        fullest(open))
                .filter(this::keepsParts)
                .min(BETTER)
                .orElseThrow();
    }

    /** Whether the parts of each lesson come in their order, from day to day. */
    private boolean keepsParts(Assignment placing) {
        Map<Integer, Integer> last = new HashMap<>();
        return parts.stream().allMatch(part -> {
            int day = placing.day(part);
            @Nullable Integer before = day < 0 ? null : last.put(part.lesson(), day);
            return before == null || before <= day;
        });
    }

    /**
     * The same or a better placing that leaves out days, the emptiest first. A day may be left out for nothing at first: what was on it may
     * have to go past another day, too, before a session is spared.
     */
    private Assignment spared(Assignment known, BitSet open) {
        Assignment best = known;
        Assignment trial = known;
        BitSet left = open;
        boolean further = true;
        while (further && trial.used() > (trial.left().isEmpty() ? fewest : 1)) {
            further = false;
            for (int day : emptiestFirst(trial)) {
                BitSet fewer = (BitSet) left.clone();
                fewer.clear(day);
                Assignment without = isFree() ? shuffled(best(fewer), fewer, STEPS_WITHOUT_A_DAY) : best(fewer);
                if (BETTER.compare(without, trial) <= 0) {
                    trial = without;
                    left = fewer;
                    further = true;
                    break;
                }
            }
            best = BETTER.compare(trial, best) < 0 ? trial : best;
        }
        return best;
    }

    private static List<Integer> emptiestFirst(Assignment best) {
        return IntStream.range(0, best.days())
                .filter(day -> !best.isFree(day))
                .boxed()
                .sorted(Comparator.comparingInt(best::minutesRead))
                .toList();
    }

    /** Each task on the day of the one before it if there is room, otherwise on the next day that has some. */
    private Assignment inOrder(BitSet open) {
        Assignment placing = nothing.fresh();
        int from = 0;
        for (RecordingTask work : works) {
            int day = placing.placeFrom(from, work, open);
            from = day < 0 ? from : day;
        }
        return placing;
    }

    /** Each task on the first day that has room for it. */
    private Assignment firstFit(List<RecordingTask> order, BitSet open) {
        Assignment placing = nothing.fresh();
        Map<Integer, Integer> parts = new HashMap<>();
        for (RecordingTask work : order) {
            int day = placing.placeFrom(parts.getOrDefault(work.lesson(), 0), work, open);
            // The parts of a lesson are recorded in order.
            parts.put(work.lesson(), Math.max(day, 0));
        }
        return placing;
    }

    /** Each day, from the first, as full as it can be. */
    private Assignment fullest(BitSet open) {
        Assignment placing = nothing.fresh();
        List<RecordingTask> read = rooms.asRead(works);
        SessionKnapsack knapsack = rooms.knapsack(works);
        BitSet left = new BitSet();
        left.set(0, read.size());
        for (int day = open.nextSetBit(0); day >= 0; day = open.nextSetBit(day + 1)) {
            // Where a day is spared, those before it are filled as they were.
            BitSet held = fullest.computeIfAbsent(
                    new Space((BitSet) left.clone(), rooms.minutes(day)),
                    space -> knapsack.works(space.left(), space.room(), rooms.reading()));
            for (int i : held.stream().toArray()) {
                placing.mustPlace(day, read.get(i));
            }
            left.andNot(held);
        }
        left.stream().mapToObj(read::get).forEach(placing::leave);
        return placing;
    }

    private boolean isFree() {
        return rooms.terms().order() == ReadingOrder.FREE;
    }

    private List<RecordingTask> byKind() {
        return works.stream().sorted(Comparator.comparing(RecordingTask::kind)).toList();
    }

    private List<RecordingTask> longestFirst() {
        return works.stream()
                .sorted(Comparator.comparing(RecordingTask::length).reversed())
                .toList();
    }
}
