package org.bookholder.course.shoot;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

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

    private Assignment(Assignment other) {
        rooms = other.rooms;
        placed.addAll(other.placed);
        left.addAll(other.left);
    }

    Assignment copy() {
        return new Assignment(this);
    }

    /** The same days with nothing placed. */
    Assignment emptied() {
        return new Assignment(rooms);
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

    /** Removes the task that was last put on a day. */
    void takeBack(int day) {
        List<RecordingTask> works = placed.get(day);
        placed.set(day, works.subList(0, works.size() - 1));
    }

    void leave(RecordingTask work) {
        left.add(work);
    }

    /** Removes the task that was last left over. */
    void takeLeft() {
        left.remove(left.size() - 1);
    }

    int days() {
        return placed.size();
    }

    boolean isFree(int day) {
        return placed.get(day).isEmpty();
    }

    /** Minutes for reading and breaks on a day. */
    int room(int day) {
        return rooms.minutes(day);
    }

    List<RecordingTask> left() {
        return List.copyOf(left);
    }

    long used() {
        return placed.stream().filter(works -> !works.isEmpty()).count();
    }

    /** Whether nothing is left over and at most this many sessions are used. */
    boolean holdsAllIn(int sessions) {
        return left.isEmpty() && used() <= sessions;
    }

    /** Whether less is left over than in the other, or just as much with fewer sessions. */
    boolean isBetterThan(Assignment other) {
        int more = RecordingTask.minutesOf(left) - RecordingTask.minutesOf(other.left);
        return more < 0 || (more == 0 && used() < other.used());
    }

    Assignment orBetter(Assignment other) {
        return other.isBetterThan(this) ? other : this;
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
