package org.bookholder.course.shoot;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * If not all tasks can be placed, searches for a way to leave over as little as possible, within a limited number of
 * steps: for a handful of lessons it tries every way, for a long course the most promising ones. The same input always
 * gives the same result. Confined to one thread.
 */
final class AssignmentSearch {
    /** Takes about a tenth of a second. */
    private static final int MOST_STEPS = 20_000;

    private final List<RecordingTask> works;
    private final Assignment now;
    private Assignment best;
    private int steps;

    private AssignmentSearch(Assignment best, List<RecordingTask> works) {
        this.works = works;
        this.best = best;
        this.now = best.emptied();
    }

    /**
     * The best assignment found, or {@code known} if none is better.
     *
     * @param works the tasks to place, hardest to place first; the first attempt puts each on the first day that has
     *     room for it
     */
    static Assignment better(Assignment known, List<RecordingTask> works) {
        AssignmentSearch search = new AssignmentSearch(known, works);
        search.place(0);
        return search.best;
    }

    private void place(int index) {
        if (steps++ > MOST_STEPS || !now.isBetterThan(best)) {
            return;
        }
        if (index == works.size()) {
            best = now.copy();
            return;
        }
        RecordingTask work = works.get(index);
        Set<Integer> free = new HashSet<>();
        for (int day = 0; day < now.days(); day++) {
            // Of several free days of equal length, only one is tried.
            boolean tried = now.isFree(day) && !free.add(now.room(day));
            if (!tried && now.place(day, work)) {
                place(index + 1);
                now.takeBack(day);
            }
        }
        now.leave(work);
        place(index + 1);
        now.takeLeft();
    }
}
