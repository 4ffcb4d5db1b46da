package org.bookholder.course.shoot;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Records which task is done in which session, and which tasks are left over. A plan is looked for by making thousands of these, so whether
 * a task has room is worked out in whole minutes, without making a session. Confined to one thread.
 */
final class Assignment {
    private final SessionCapacities rooms;
    private final Breaks breaks;
    private final Comparator<RecordingTask> order;

    /** Minutes for reading and breaks on each day. */
    private final int[] room;

    /** The tasks of each day, in the order in which they are read. */
    private final List<List<RecordingTask>> placed = new ArrayList<>();

    /** How many minutes they take together. */
    private final int[] read;

    private final List<RecordingTask> left = new ArrayList<>();

    /** Creates an assignment in which nothing is placed yet. */
    Assignment(SessionCapacities rooms) {
        this(rooms, IntStream.range(0, rooms.days()).map(rooms::minutes).toArray());
    }

    private Assignment(SessionCapacities rooms, int[] room) {
        this.rooms = rooms;
        this.breaks = Breaks.of(rooms.terms());
        this.order = rooms.readingOrder();
        this.room = room;
        this.read = new int[room.length];
        for (int day = 0; day < room.length; day++) {
            placed.add(new ArrayList<>());
        }
    }

    /** An assignment for the same days, in which nothing is placed yet. */
    Assignment fresh() {
        return new Assignment(rooms, room);
    }

    /** Puts a task on a day if there is room for it; returns whether there was. */
    boolean place(int day, RecordingTask work) {
        int reading = read[day] + work.minutes();
        if (reading > rooms.reading() || breaks.shortest(reading) > room[day]) {
            return false;
        }
        List<RecordingTask> works = placed.get(day);
        int at = works.size();
        while (at > 0 && order.compare(works.get(at - 1), work) > 0) {
            at--;
        }
        works.add(at, work);
        if (breaks.lasting(progress(works), reading) > room[day]) {
            works.remove(at);
            return false;
        }
        read[day] = reading;
        return true;
    }

    private int progress(List<RecordingTask> works) {
        int far = Breaks.NOTHING_READ;
        for (RecordingTask work : works) {
            far = breaks.read(far, work.minutes());
        }
        return far;
    }

    /** Puts a task on a day of which it is known that it has room for it. */
    void mustPlace(int day, RecordingTask work) {
        if (!place(day, work)) {
            throw new IllegalStateException(work + " must have room on day " + day);
        }
    }

    /**
     * Puts a task on the first day with room for it, or leaves it over.
     *
     * @param from no earlier day is tried
     * @param open the days that may be used
     * @return the day, -1 if the task is left over
     */
    int placeFrom(int from, RecordingTask work, BitSet open) {
        for (int day = open.nextSetBit(from); day >= 0; day = open.nextSetBit(day + 1)) {
            if (place(day, work)) {
                return day;
            }
        }
        leave(work);
        return -1;
    }

    void leave(RecordingTask work) {
        left.add(work);
    }

    int days() {
        return placed.size();
    }

    boolean isFree(int day) {
        return placed.get(day).isEmpty();
    }

    List<RecordingTask> left() {
        return List.copyOf(left);
    }

    /** The number of sessions. */
    int used() {
        return (int) placed.stream().filter(works -> !works.isEmpty()).count();
    }

    /** The last day on which something is placed, -1 if nothing is. */
    int lastDay() {
        int day = placed.size() - 1;
        while (day >= 0 && placed.get(day).isEmpty()) {
            day--;
        }
        return day;
    }

    /** How often something is set up: once on each day for each kind of lesson. */
    int setUps() {
        return (int) placed.stream()
                .mapToLong(works ->
                        works.stream().map(RecordingTask::kind).distinct().count())
                .sum();
    }

    int minutesLeft() {
        return RecordingTask.minutesOf(left);
    }

    /** Minutes before the camera on a day. */
    int minutesRead(int day) {
        return read[day];
    }

    /** The day on which a task is placed, -1 if it is left over. */
    int day(RecordingTask work) {
        return IntStream.range(0, days())
                .filter(day -> placed.get(day).contains(work))
                .findFirst()
                .orElse(-1);
    }

    List<PlannedSession> sessions() {
        List<PlannedSession> sessions = new ArrayList<>();
        for (int day = 0; day < placed.size(); day++) {
            if (!placed.get(day).isEmpty()) {
                sessions.add(rooms.session(day, placed.get(day)));
            }
        }
        return sessions;
    }
}
