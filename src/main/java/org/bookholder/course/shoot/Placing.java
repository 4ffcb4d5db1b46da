package org.bookholder.course.shoot;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** What is placed in which session, and what is left over. Confined to one thread. */
final class Placing {
    private final List<Duration> rooms;
    private final Sessions made;
    private final Terms terms;
    private final List<List<Work>> placed = new ArrayList<>();
    private final List<Work> left = new ArrayList<>();

    /** The session that these works make on a day. */
    @FunctionalInterface
    interface Sessions {
        PlannedSession of(int day, List<Work> works);
    }

    /** Nothing placed on days that have so much room. */
    Placing(List<Duration> rooms, Sessions made, Terms terms) {
        this.rooms = rooms;
        this.made = made;
        this.terms = terms;
        placed.addAll(Collections.nCopies(rooms.size(), List.of()));
    }

    private Placing(Placing other) {
        rooms = other.rooms;
        made = other.made;
        terms = other.terms;
        placed.addAll(other.placed);
        left.addAll(other.left);
    }

    Placing copy() {
        return new Placing(this);
    }

    /** The same days, and nothing placed. */
    Placing emptied() {
        return new Placing(rooms, made, terms);
    }

    /** Puts a work on a day, if there is room for it. */
    boolean place(int day, Work work) {
        List<Work> more = new ArrayList<>(placed.get(day));
        more.add(work);
        if (!made.of(day, more).fits(terms)) {
            return false;
        }
        placed.set(day, List.copyOf(more));
        return true;
    }

    /** Takes back what was put on a day last. */
    void takeBack(int day) {
        List<Work> works = placed.get(day);
        placed.set(day, works.subList(0, works.size() - 1));
    }

    void leave(Work work) {
        left.add(work);
    }

    /** Takes back what was left last. */
    void takeLeft() {
        left.remove(left.size() - 1);
    }

    int days() {
        return placed.size();
    }

    boolean isFree(int day) {
        return placed.get(day).isEmpty();
    }

    /** How long a session on a day may last. */
    Duration room(int day) {
        return rooms.get(day);
    }

    List<Work> left() {
        return List.copyOf(left);
    }

    long used() {
        return placed.stream().filter(works -> !works.isEmpty()).count();
    }

    /** Whether nothing is left over and no fewer sessions than {@code least} are used. */
    boolean isLeast(long least) {
        return left.isEmpty() && used() <= least;
    }

    /** Whether less is left over than in the other, or the same in fewer sessions. */
    boolean isBetterThan(Placing other) {
        int more = SessionPlanner.sum(left).compareTo(SessionPlanner.sum(other.left));
        return more < 0 || (more == 0 && used() < other.used());
    }

    Placing orBetter(Placing other) {
        return other.isBetterThan(this) ? other : this;
    }

    List<PlannedSession> sessions() {
        List<PlannedSession> sessions = new ArrayList<>();
        for (int day = 0; day < placed.size(); day++) {
            if (!placed.get(day).isEmpty()) {
                sessions.add(made.of(day, placed.get(day)));
            }
        }
        return sessions;
    }
}
