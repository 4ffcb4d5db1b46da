package org.bookholder.course.shoot;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;

/** Records which task is done in which session, and which tasks are left over. Confined to one thread. */
final class Assignment {
    private final SessionCapacities rooms;
    private final List<List<RecordingTask>> placed = new ArrayList<>();
    private final List<RecordingTask> left = new ArrayList<>();

    /** Creates an assignment in which nothing is placed yet. */
    Assignment(SessionCapacities rooms) {
        this.rooms = rooms;
        placed.addAll(Collections.nCopies(rooms.days(), List.of()));
    }

    /** Puts a task on a day if there is room for it; returns whether there was. */
    boolean place(int day, RecordingTask work) {
        List<RecordingTask> more = new ArrayList<>(placed.get(day));
        more.add(work);
        if (!rooms.session(day, more).fits(rooms.terms())) {
            return false;
        }
        placed.set(day, List.copyOf(more));
        return true;
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
        return RecordingTask.minutesOf(placed.get(day));
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
