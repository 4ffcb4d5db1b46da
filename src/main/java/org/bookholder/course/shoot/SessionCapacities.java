package org.bookholder.course.shoot;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import org.bookholder.course.ReadingOrder;
import org.bookholder.course.Shooting.Day;
import org.bookholder.course.Text;

/**
 * The possible sessions and how much each can hold.
 *
 * @param given the days, in order; if no days are known, a single one that stands for as many as needed
 * @param dated whether days are known
 * @param terms what each session must keep to
 */
record SessionCapacities(List<Day> given, boolean dated, Terms terms) {
    /** Within a session, lessons of one kind are read one after another, of them the hardest first. */
    private static final Comparator<RecordingTask> HARDEST_FIRST = Comparator.comparing(RecordingTask::kind)
            .thenComparing(Comparator.comparingDouble(RecordingTask::hardness).reversed())
            .thenComparingInt(RecordingTask::lesson);

    private static final Comparator<RecordingTask> IN_ORDER = Comparator.comparingInt(RecordingTask::lesson);

    int days() {
        return given.size();
    }

    /** Minutes for reading and breaks on a day. */
    int minutes(int day) {
        return Math.toIntExact(given.get(day).length().minus(terms.setUp()).toMinutes());
    }

    /** Whether anything can be read on any day. */
    boolean roomy() {
        return IntStream.range(0, days()).anyMatch(day -> minutes(day) > 0);
    }

    /** The name of a day in messages. */
    String name(int day) {
        return dated
                ? given.get(day).date().toString()
                : "a session of " + Text.hours(given.get(day).length());
    }

    /** The same for this many sessions, if no days are known. */
    SessionCapacities of(int sessions) {
        return dated
                ? this
                : new SessionCapacities(Collections.nCopies(Math.max(1, sessions), given.get(0)), false, terms);
    }

    /** The session that reads these tasks on a day. */
    PlannedSession session(int day, List<RecordingTask> works) {
        Day d = given.get(day);
        Optional<LocalDate> date = dated ? Optional.of(d.date()) : Optional.empty();
        return PlannedSession.of(date, d.from(), d.length(), asRead(works), terms);
    }

    /** Tasks of a session in the order in which they are read. */
    List<RecordingTask> asRead(List<RecordingTask> works) {
        return works.stream().sorted(readingOrder()).toList();
    }

    /** In which order the tasks of a session are read. */
    Comparator<RecordingTask> readingOrder() {
        return terms.order() == ReadingOrder.KEPT ? IN_ORDER : HARDEST_FIRST;
    }

    /** Tasks in the order in which days are to be filled with them. */
    List<RecordingTask> asPlanned(List<RecordingTask> works) {
        return terms.order() == ReadingOrder.HARD_EARLY
                ? works.stream()
                        .sorted(Comparator.comparingDouble(RecordingTask::hardness)
                                .reversed()
                                .thenComparingInt(RecordingTask::lesson))
                        .toList()
                : works;
    }

    /** Whether any session could hold a task. */
    boolean holdAlone(RecordingTask work) {
        return IntStream.range(0, days())
                .anyMatch(day -> session(day, List.of(work)).fits(terms));
    }

    /**
     * How long a further session with these tasks would be, set-up and breaks included; 0 if it would be too much
     * reading.
     */
    int lasting(List<RecordingTask> works) {
        PlannedSession further =
                PlannedSession.of(Optional.empty(), given.get(0).from(), Duration.ZERO, asRead(works), terms);
        boolean tooMuch = further.reading().compareTo(terms.reading()) > 0;
        return tooMuch ? 0 : Math.toIntExact(further.length().toMinutes());
    }

    /** An upper bound on the minutes that can be read on all days together. */
    int mostReading(List<RecordingTask> works) {
        return sum(minutesHeld(works), days());
    }

    /** An upper bound on the number of tasks that can be read on all days together. */
    int mostWorks(List<RecordingTask> works) {
        return sum(worksHeld(works), days());
    }

    /**
     * A lower bound on the number of sessions needed for all tasks; larger than the number of sessions if they cannot
     * hold them all.
     */
    int fewest(List<RecordingTask> works) {
        List<Integer> minutes = minutesHeld(works);
        List<Integer> counts = worksHeld(works);
        int needed = RecordingTask.minutesOf(works);
        int fewest = 0;
        while (fewest <= days() && (sum(minutes, fewest) < needed || sum(counts, fewest) < works.size())) {
            fewest++;
        }
        return fewest;
    }

    private List<Integer> minutesHeld(List<RecordingTask> works) {
        SessionKnapsack fullest = knapsack(works);
        return most(room -> fullest.most(room, reading()));
    }

    private List<Integer> worksHeld(List<RecordingTask> works) {
        SessionKnapsack fullest = knapsack(works);
        return most(room -> fullest.count(room, reading()));
    }

    /** The most that each session can hold, highest first, as computed by {@code held} from its room. */
    private List<Integer> most(IntUnaryOperator held) {
        Map<Integer, Integer> known = new HashMap<>();
        List<Integer> most = new ArrayList<>();
        for (int day = 0; day < days(); day++) {
            most.add(known.computeIfAbsent(minutes(day), held::applyAsInt));
        }
        most.sort(Collections.reverseOrder());
        return most;
    }

    private static int sum(List<Integer> numbers, int first) {
        return numbers.stream().limit(first).mapToInt(Integer::intValue).sum();
    }

    /** Finds the most of some tasks that a session can hold; they count in the order in which they are read. */
    SessionKnapsack knapsack(List<RecordingTask> works) {
        return new SessionKnapsack(
                asRead(works).stream().mapToInt(RecordingTask::minutes).toArray(), Breaks.of(terms));
    }

    int reading() {
        return Math.toIntExact(terms.reading().toMinutes());
    }
}
