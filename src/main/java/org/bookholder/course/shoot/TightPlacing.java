package org.bookholder.course.shoot;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Places works where the order of the lessons has to give way. Confined to one thread. */
final class TightPlacing {
    private final SessionRooms rooms;
    private final List<Work> works;
    private final int[] minutes;
    private WholeSearch.Answer answer = WholeSearch.Answer.NOT_FOUND;

    /** For works in any order. */
    TightPlacing(SessionRooms rooms, List<Work> works) {
        this.rooms = rooms;
        this.works = SessionRooms.asRead(works);
        minutes = this.works.stream().mapToInt(Work::minutes).toArray();
    }

    /** What came of the last search. */
    WholeSearch.Answer answer() {
        return answer;
    }

    /** All works in so many sessions, or nothing placed if no way is found. */
    Placing allIn(int sessions) {
        Placing placing = new Placing(rooms);
        WholeSearch search = new WholeSearch(minutes, Breaks.of(rooms.terms()), rooms.reading());
        // What can be placed on some days can be placed on as many of the roomiest.
        answer = search.search(
                roomiestFirst().stream().limit(sessions).map(rooms::minutes).toList());
        if (answer != WholeSearch.Answer.FOUND) {
            works.forEach(placing::leave);
            return placing;
        }
        List<BitSet> found = search.found();
        int[] days = Spread.days(
                IntStream.range(0, rooms.days()).mapToObj(rooms::minutes).toList(),
                found.stream().map(this::wanting).toList());
        for (int i = 0; i < days.length; i++) {
            place(found.get(i), days[i], placing);
        }
        return placing;
    }

    private Spread.Wanting wanting(BitSet session) {
        List<Work> read = session.stream().mapToObj(works::get).toList();
        int first = read.stream().mapToInt(Work::lesson).min().orElse(0);
        return new Spread.Wanting(
                rooms.lasting(read) - Math.toIntExact(rooms.terms().setUp().toMinutes()), first);
    }

    /** Each session as full as it can be, the roomiest first. */
    Placing fullest() {
        Placing placing = new Placing(rooms);
        Fullest fullest = new Fullest(minutes, Breaks.of(rooms.terms()));
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

    private void place(BitSet indices, int day, Placing placing) {
        indices.stream().mapToObj(works::get).forEach(work -> {
            if (!placing.place(day, work)) {
                throw new IllegalStateException(work + " must have room on day " + day);
            }
        });
    }
}
