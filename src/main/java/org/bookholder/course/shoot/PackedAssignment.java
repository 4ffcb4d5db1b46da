package org.bookholder.course.shoot;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Places tasks without keeping the lessons in order. Confined to one thread. */
final class PackedAssignment {
    private final SessionCapacities rooms;
    private final List<RecordingTask> works;
    private final int[] minutes;
    private PackingSearch.Answer answer = PackingSearch.Answer.NOT_FOUND;

    /** Creates one for tasks in any order. */
    PackedAssignment(SessionCapacities rooms, List<RecordingTask> works) {
        this.rooms = rooms;
        this.works = SessionCapacities.asRead(works);
        minutes = this.works.stream().mapToInt(RecordingTask::minutes).toArray();
    }

    /** The result of the last search. */
    PackingSearch.Answer answer() {
        return answer;
    }

    /** Places all tasks in this many sessions, or nothing if no way is found. */
    Assignment allIn(int sessions) {
        Assignment placing = new Assignment(rooms);
        PackingSearch search = new PackingSearch(minutes, Breaks.of(rooms.terms()), rooms.reading());
        // Whatever fits on some days also fits on the same number of longest days.
        answer = search.search(
                roomiestFirst().stream().limit(sessions).map(rooms::minutes).toList());
        if (answer != PackingSearch.Answer.FOUND) {
            works.forEach(placing::leave);
            return placing;
        }
        List<BitSet> found = search.found();
        int[] days = DayChooser.days(
                IntStream.range(0, rooms.days()).mapToObj(rooms::minutes).toList(),
                found.stream().map(this::wanting).toList());
        for (int i = 0; i < days.length; i++) {
            place(found.get(i), days[i], placing);
        }
        return placing;
    }

    private DayChooser.Wanting wanting(BitSet session) {
        List<RecordingTask> read = session.stream().mapToObj(works::get).toList();
        int first = read.stream().mapToInt(RecordingTask::lesson).min().orElse(0);
        return new DayChooser.Wanting(
                rooms.lasting(read) - Math.toIntExact(rooms.terms().setUp().toMinutes()), first);
    }

    /** Fills each session as far as possible, the longest first. */
    Assignment fullest() {
        Assignment placing = new Assignment(rooms);
        SessionKnapsack fullest = new SessionKnapsack(minutes, Breaks.of(rooms.terms()));
        BitSet left = new BitSet();
        left.set(0, minutes.length);
        for (int day : roomiestFirst()) {
            BitSet held = fullest.works(left, rooms.minutes(day), rooms.reading());
            place(held, day, placing);
            left.andNot(held);
        }
        left.stream().mapToObj(works::get).forEach(placing::leave);
        return placing;
    }

    private List<Integer> roomiestFirst() {
        List<Integer> days = new ArrayList<>();
        for (int day = 0; day < rooms.days(); day++) {
            days.add(day);
        }
        days.sort(Comparator.comparing(rooms::minutes, Collections.reverseOrder()));
        return days;
    }

    private void place(BitSet indices, int day, Assignment placing) {
        indices.stream().mapToObj(works::get).forEach(work -> {
            if (!placing.place(day, work)) {
                throw new IllegalStateException(work + " must have room on day " + day);
            }
        });
    }
}
