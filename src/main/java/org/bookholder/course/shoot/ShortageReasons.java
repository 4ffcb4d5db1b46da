package org.bookholder.course.shoot;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.bookholder.course.ReadingOrder;
import org.bookholder.course.Text;

/**
 * Explains why some tasks have no session. "Impossible" is said only where it is proved; otherwise it says "not found".
 */
final class ShortageReasons {
    private final SessionCapacities rooms;
    private final List<RecordingTask> works;
    private final List<RecordingTask> left;
    private final List<String> why = new ArrayList<>();

    private ShortageReasons(SessionCapacities rooms, List<RecordingTask> works, List<RecordingTask> left) {
        this.rooms = rooms;
        this.works = works;
        this.left = left;
    }

    /**
     * The reasons, each one sentence that also says what to do.
     *
     * @param left the tasks that did not fit, at least one
     */
    static List<String> why(SessionCapacities rooms, List<RecordingTask> works, List<RecordingTask> left) {
        ShortageReasons shortage = new ShortageReasons(rooms, works, left);
        shortage.tooShortDays();
        boolean tooLong = shortage.tooLongWorks();
        if (rooms.dated() && rooms.roomy() && !tooLong) {
            shortage.tooFewDays();
        }
        return List.copyOf(shortage.why);
    }

    private void tooShortDays() {
        for (int day = 0; day < rooms.days(); day++) {
            if (rooms.minutes(day) <= 0) {
                String tooShort = rooms.name(day) + " is too short to read anything after "
                        + Text.hours(rooms.terms().setUp()) + " of set-up; give it more hours, or set up faster";
                if (!why.contains(tooShort)) {
                    why.add(tooShort);
                }
            }
        }
    }

    private boolean tooLongWorks() {
        List<String> names = left.stream()
                .filter(work -> rooms.roomy() && !rooms.holdAlone(work))
                .map(RecordingTask::name)
                .distinct()
                .toList();
        if (!names.isEmpty()) {
            why.add(String.join(", ", names) + " would not fit into any session, not even in "
                    + SessionPlanner.MOST_PARTS + " parts; make several lessons of it");
        }
        return !names.isEmpty();
    }

    private void tooFewDays() {
        int needed = RecordingTask.minutesOf(works);
        int most = rooms.mostReading(works);
        int count = rooms.mostWorks(works);
        String reason;
        if (needed > most) {
            reason = "there are " + hours(needed) + " to record, and the days given hold at most " + hours(most)
                    + " of it, whole lessons and with their breaks";
        } else if (works.size() > count) {
            reason = "there are " + works.size() + " lessons or parts to record, and the days given hold at most "
                    + count + ", whole and with their breaks";
        } else {
            reason = rooms.terms().order() == ReadingOrder.FREE
                    ? "the time would do, but no way was found to fit whole lessons into the days (not all ways were"
                            + " tried: there may be one)"
                    : "the time would do, but not in the order that you chose";
        }
        why.add(reason + "; " + remedy());
    }

    /** Whether a day is too short for all that may be read on one; a longer one than that holds no more. */
    private boolean longerDaysHelp() {
        Breaks breaks = Breaks.of(rooms.terms());
        int most = rooms.reading();
        int lasting = breaks.lasting(breaks.read(Breaks.NOTHING_READ, most), most);
        return IntStream.range(0, rooms.days()).anyMatch(day -> rooms.minutes(day) < lasting);
    }

    private static String hours(int minutes) {
        return Text.hours(Duration.ofMinutes(minutes));
    }

    private String remedy() {
        int alone = rooms.lasting(left);
        return (alone == 0 ? "add days" : "add a day, of " + hours(alone) + " or more")
                + (longerDaysHelp() ? ", or give the days more hours" : "");
    }
}
