package org.bookholder.course.shoot;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Assigns days to sessions: the earliest days that work for all of them, with lessons in order as far as the days
 * allow.
 */
final class DayChooser {
    private DayChooser() {}

    /**
     * A session that wants a day.
     *
     * @param minutes how long its reading and breaks last
     * @param lesson the first of its lessons
     */
    record Wanting(int minutes, int lesson) {}

    /**
     * Returns the index of each session's day; it must be possible to give each session a day.
     *
     * @param rooms minutes for reading and breaks on each day, in order of time
     */
    static int[] days(List<Integer> rooms, List<Wanting> sessions) {
        List<Integer> days = new ArrayList<>();
        for (int day = 0; day < rooms.size(); day++) {
            days.add(day);
            // Keep a day if it can be used together with the earlier days kept. Any such set of days can be extended to
            // one that has a day for every session, so nothing is gained by saving a session for a later day.
            if (!canAllBeUsed(rooms, days, minutes(sessions))) {
                days.remove(days.size() - 1);
            }
        }
        int[] found = new int[sessions.size()];
        // Compared by index, because two parts of a lesson may have equal needs.
        List<Integer> open =
                new ArrayList<>(IntStream.range(0, sessions.size()).boxed().toList());
        open.sort(Comparator.comparingInt(index -> sessions.get(index).lesson()));
        for (int i = 0; i < days.size(); i++) {
            List<Integer> later = days.subList(i + 1, days.size());
            for (Integer index : open) {
                List<Integer> others = new ArrayList<>(open);
                others.remove(index);
                List<Wanting> left = others.stream().map(sessions::get).toList();
                if (sessions.get(index).minutes() <= rooms.get(days.get(i))
                        && canAllBeUsed(rooms, later, minutes(left))) {
                    found[index] = days.get(i);
                    open = others;
                    break;
                }
            }
        }
        return found;
    }

    private static List<Integer> minutes(List<Wanting> sessions) {
        return sessions.stream().map(Wanting::minutes).sorted().toList();
    }

    /**
     * Whether each day can be given a different session that fits: the shortest session to the smallest day, and so on.
     */
    private static boolean canAllBeUsed(List<Integer> rooms, List<Integer> days, List<Integer> sessions) {
        if (days.size() > sessions.size()) {
            return false;
        }
        List<Integer> smallestFirst =
                new ArrayList<>(days.stream().map(rooms::get).toList());
        Collections.sort(smallestFirst);
        for (int i = 0; i < smallestFirst.size(); i++) {
            if (smallestFirst.get(i) < sessions.get(i)) {
                return false;
            }
        }
        return true;
    }
}
