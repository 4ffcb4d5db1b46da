package org.bookholder.course.shoot;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Searches for a way to place all tasks in sessions, or proves that there is none.
 *
 * <p>It puts the longest remaining task into a session and fills that session with others until nothing more fits. This
 * is enough: if there is a way at all, there is one in which every session is filled like this, because moving a task
 * to an earlier session makes room in a later one ({@link Breaks}). The search abandons a branch as soon as the
 * remaining sessions cannot hold the rest ({@link SessionKnapsack}), or the same rest did not fit into the same sessions
 * before. It tries the smallest sessions first, which succeeds more often with long lessons, then the largest, which
 * succeeds more often with short ones. The same input always gives the same result. Confined to one thread.
 */
final class PackingSearch {
    /** Takes a tenth of a second or two. */
    private static final int MOST_STEPS = 150_000;

    private final int[] minutes;
    private final Breaks breaks;
    private final int reading;
    private final SessionKnapsack fullest;
    private final int[] longestFirst;
    private final Set<Rest> failed = new HashSet<>();
    private final List<BitSet> found = new ArrayList<>();
    private int steps;

    /** Result of the search. */
    enum Answer {
        /** There is a way. */
        FOUND,
        /** There is none. */
        NONE,
        /** None was found; there may be one. */
        NOT_FOUND
    }

    /** The remaining tasks and the remaining rooms for them. */
    private record Rest(BitSet works, List<Integer> rooms) {}

    /**
     * Creates a search that has not started.
     *
     * @param minutes length of each task, in the order in which a session reads them
     * @param reading the most minutes of reading in a session
     */
    PackingSearch(int[] minutes, Breaks breaks, int reading) {
        this.minutes = minutes;
        this.breaks = breaks;
        this.reading = reading;
        fullest = new SessionKnapsack(minutes, breaks);
        longestFirst = IntStream.range(0, minutes.length)
                .boxed()
                .sorted(Comparator.comparingInt((Integer i) -> minutes[i]).reversed())
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /**
     * Searches for a way to put all tasks into sessions.
     *
     * @param rooms minutes for reading and breaks in each
     */
    Answer search(List<Integer> rooms) {
        List<Integer> inOrder = new ArrayList<>(rooms);
        Collections.sort(inOrder);
        Answer answer = inThatOrder(inOrder);
        if (answer == Answer.NOT_FOUND) {
            Collections.reverse(inOrder);
            answer = inThatOrder(inOrder);
        }
        return answer;
    }

    private Answer inThatOrder(List<Integer> rooms) {
        steps = 0;
        failed.clear();
        found.clear();
        BitSet all = new BitSet();
        all.set(0, minutes.length);
        if (place(all, List.copyOf(rooms))) {
            return Answer.FOUND;
        }
        return givenUp() ? Answer.NOT_FOUND : Answer.NONE;
    }

    /** The tasks of each session in the solution, as indices; empty sessions are left out. */
    List<BitSet> found() {
        return List.copyOf(found);
    }

    private boolean givenUp() {
        return steps > MOST_STEPS;
    }

    private boolean place(BitSet left, List<Integer> rooms) {
        if (left.isEmpty()) {
            return true;
        }
        Rest rest = new Rest(left, rooms);
        if (failed.contains(rest)) {
            return false;
        }
        Map<Integer, Integer> most = new LinkedHashMap<>();
        rooms.forEach(room -> most.computeIfAbsent(room, r -> fullest.minutes(fullest.works(left, r, reading))));
        int spare = rooms.stream().mapToInt(most::get).sum() - fullest.minutes(left);
        if (spare < 0) {
            return false;
        }
        for (Map.Entry<Integer, Integer> room : most.entrySet()) {
            List<Integer> others = new ArrayList<>(rooms);
            others.remove(room.getKey());
            if (new Filling(left, room.getKey(), others, room.getValue() - spare).complete()) {
                return true;
            }
        }
        if (!givenUp()) {
            failed.add(rest);
        }
        return false;
    }

    /** Whether these tasks fit into a session. */
    private boolean holds(BitSet works, int room) {
        int far = Breaks.NOTHING_READ;
        int sum = 0;
        for (int i = works.nextSetBit(0); i >= 0; i = works.nextSetBit(i + 1)) {
            far = breaks.read(far, minutes[i]);
            sum += minutes[i];
        }
        return sum <= reading && breaks.lasting(far, sum) <= room;
    }

    /** Fills one session in every way that does not waste more room than can be spared. */
    private final class Filling {
        private final BitSet left;
        private final int room;
        private final List<Integer> others;
        private final int least;
        private final int[] candidates;
        private final int[] toCome;
        private final BitSet chosen = new BitSet();

        Filling(BitSet left, int room, List<Integer> others, int least) {
            this.left = left;
            this.room = room;
            this.others = others;
            this.least = least;
            candidates = IntStream.of(longestFirst).filter(left::get).toArray();
            toCome = new int[candidates.length + 1];
            for (int i = candidates.length - 1; i >= 0; i--) {
                toCome[i] = toCome[i + 1] + minutes[candidates[i]];
            }
        }

        /** Whether there is a solution in which this session reads the longest remaining task. */
        boolean complete() {
            chosen.set(candidates[0]);
            return holds(chosen, room) && choose(1, minutes[candidates[0]]);
        }

        private boolean choose(int next, int sum) {
            if (sum + toCome[next] < least || givenUp()) {
                return false;
            }
            if (next == candidates.length) {
                return isFull() && placeOthers();
            }
            int work = candidates[next];
            if (add(work)) {
                if (choose(next + 1, sum + minutes[work])) {
                    return true;
                }
                chosen.clear(work);
            }
            return choose(next + 1, sum);
        }

        private boolean add(int work) {
            steps++;
            chosen.set(work);
            if (holds(chosen, room)) {
                return true;
            }
            chosen.clear(work);
            return false;
        }

        /** Whether nothing more fits. */
        private boolean isFull() {
            for (int work : candidates) {
                if (!chosen.get(work) && add(work)) {
                    chosen.clear(work);
                    return false;
                }
            }
            return true;
        }

        private boolean placeOthers() {
            BitSet rest = (BitSet) left.clone();
            rest.andNot(chosen);
            found.add((BitSet) chosen.clone());
            if (place(rest, others)) {
                return true;
            }
            found.remove(found.size() - 1);
            return false;
        }
    }
}
