package org.bookholder.course.shoot;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A planned recording session.
 *
 * @param date its day; empty while no days are known
 * @param from when it begins
 * @param room how long it may last
 * @param slots what happens in it, in order and without gaps
 */
public record PlannedSession(Optional<LocalDate> date, LocalTime from, Duration room, List<Slot> slots) {
    /** Copies the list. */
    public PlannedSession {
        slots = List.copyOf(slots);
    }

    /** The purpose of a part of a session. */
    public enum Use {
        /** Before the first take. */
        SET_UP,
        /** Before the camera. */
        READING,
        /** Away from it. */
        BREAK
    }

    /**
     * A part of a session.
     *
     * @param use what it is for
     * @param start since the session's beginning
     * @param length how long it is
     * @param work the task that is read; empty unless it is for reading
     */
    public record Slot(Use use, Duration start, Duration length, Optional<RecordingTask> work) {
        /** When it ends, since the session's beginning. */
        public Duration end() {
            return start.plus(length);
        }
    }

    /**
     * A session that reads these tasks in this order after the set-up. A break comes before any task that would exceed
     * the longest stretch of reading, and within a task only if the task alone exceeds it.
     */
    static PlannedSession of(
            Optional<LocalDate> date, LocalTime from, Duration room, List<RecordingTask> works, Terms terms) {
        List<Slot> slots = new ArrayList<>();
        Duration at = terms.setUp();
        if (!at.isZero()) {
            slots.add(new Slot(Use.SET_UP, Duration.ZERO, at, Optional.empty()));
        }
        Duration stretch = Duration.ZERO;
        for (RecordingTask work : works) {
            Duration left = work.length();
            while (!left.isZero()) {
                Duration next = min(left, terms.stretch());
                if (stretch.plus(next).compareTo(terms.stretch()) > 0) {
                    slots.add(new Slot(Use.BREAK, at, terms.pause(), Optional.empty()));
                    at = at.plus(terms.pause());
                    stretch = Duration.ZERO;
                }
                slots.add(new Slot(Use.READING, at, next, Optional.of(work)));
                at = at.plus(next);
                stretch = stretch.plus(next);
                left = left.minus(next);
            }
        }
        return new PlannedSession(date, from, room, slots);
    }

    private static Duration min(Duration a, Duration b) {
        return a.compareTo(b) <= 0 ? a : b;
    }

    /** How long it lasts. */
    public Duration length() {
        return slots.isEmpty() ? Duration.ZERO : slots.get(slots.size() - 1).end();
    }

    /** How much of it is reading. */
    public Duration reading() {
        return slots.stream()
                .filter(slot -> slot.use() == Use.READING)
                .map(Slot::length)
                .reduce(Duration.ZERO, Duration::plus);
    }

    /** For how many kinds of lessons is set up. */
    public long kinds() {
        return works().stream().map(RecordingTask::kind).distinct().count();
    }

    /** The tasks read in it, in order, each once. */
    public List<RecordingTask> works() {
        return slots.stream().flatMap(slot -> slot.work().stream()).distinct().toList();
    }

    /** Whether it keeps to its available time and to the terms. */
    boolean fits(Terms terms) {
        return length().compareTo(room) <= 0 && reading().compareTo(terms.reading()) <= 0;
    }
}
