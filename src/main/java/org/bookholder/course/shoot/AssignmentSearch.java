package org.bookholder.course.shoot;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Where not all works can be placed, looks for a way to leave as little as possible, as far as a number of steps goes:
 * through all ways for a handful of lessons, through the most promising ones of a long course. The same question gets
 * the same answer. Confined to one thread.
 */
final class AssignmentSearch {
    /** A tenth of a second or so. */
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
     * The best that is found, or {@code known} if nothing better is.
     *
     * @param works what is placed in it, those first that are hardest to place; the first way that is tried puts each
     *     on the first day with room for it
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
            // Of free days that are equally long one is tried for all.
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
