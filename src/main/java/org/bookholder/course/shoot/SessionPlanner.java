package org.bookholder.course.shoot;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Shooting;
import org.bookholder.course.Shooting.Day;
import org.bookholder.course.Text;

/**
 * Splits what is to be recorded into sessions.
 *
 * <p>Lessons are taken in order, each session filled before the next is begun. If less could be left over, or fewer sessions
 * would do, they are placed otherwise: each into the first session with room for it, or by {@link PlacingSearch}. A lesson is split only if no session could hold the whole of it. Within a session the hardest comes
 * first, while the voice is fresh.
 */
public final class SessionPlanner {
    private static final int MOST_PARTS = 20;

    private static final Comparator<Work> HARDEST_FIRST =
            Comparator.comparingDouble(Work::hardness).reversed().thenComparingInt(Work::lesson);

    private final Terms terms;

    /** Those given; if there are none, one that stands for as many as it takes. */
    private final List<Day> days;

    private final boolean dated;

    private SessionPlanner(Terms terms, List<Day> days, boolean dated) {
        this.terms = terms;
        this.days = days;
        this.dated = dated;
    }

    /**
     * Plans sessions.
     *
     * @param works what is to be recorded, in order
     * @param shooting the days on which it can be; if there are none, as many sessions of the usual length as it takes
     * @param today days before it are over
     */
    public static SessionPlan plan(List<Work> works, Shooting shooting, Terms terms, LocalDate today) {
        List<Day> days = shooting.days().stream()
                .filter(day -> !day.date().isBefore(today))
                .toList();
        boolean dated = !shooting.days().isEmpty();
        if (works.isEmpty()) {
            return new SessionPlan(List.of(), List.of(), List.of());
        }
        if (dated && days.isEmpty()) {
            return new SessionPlan(
                    List.of(),
                    works,
                    List.of("every recording day is over; write new days into recording: days: in course.yaml"));
        }
        if (!dated) {
            days = List.of(new Day(LocalDate.EPOCH, Shooting.USUAL_START, Shooting.USUAL_LENGTH));
        }
        return new SessionPlanner(terms, days, dated).plan(works);
    }

    private SessionPlan plan(List<Work> works) {
        List<Work> whole = new ArrayList<>();
        works.forEach(work -> whole.addAll(parts(work)));
        Placing best = placed(whole);
        return new SessionPlan(best.sessions(), best.left(), best.left().isEmpty() ? List.of() : why(whole, best));
    }

    private Placing placed(List<Work> works) {
        long least = least(works);
        Placing best = placed(works, true);
        if (!best.isLeast(least)) {
            best = best.orBetter(placed(works, false));
        }
        return best.isLeast(least) ? best : PlacingSearch.better(best, longestFirst(works), least);
    }

    /** Each work on the first day with room for it, or, {@code inOrder}, on none before the last one's. */
    private Placing placed(List<Work> works, boolean inOrder) {
        Placing placing = new Placing(rooms(works.size()), this::session, terms);
        int from = 0;
        for (Work work : works) {
            int day = from;
            while (day < placing.days() && !placing.place(day, work)) {
                day++;
            }
            if (day == placing.days()) {
                placing.leave(work);
            }
            from = inOrder ? day : 0;
        }
        return placing;
    }

    /** How long each session may last. Without days there are as many as works, so that none is wanting. */
    private List<Duration> rooms(int works) {
        return dated
                ? days.stream().map(Day::length).toList()
                : Collections.nCopies(works, days.get(0).length());
    }

    private static List<Work> longestFirst(List<Work> works) {
        return works.stream()
                .sorted(Comparator.comparing(Work::length).reversed())
                .toList();
    }

    /** Fewer sessions than this cannot hold all of it. */
    private long least(List<Work> works) {
        long most = 1;
        for (int day = 0; day < days.size(); day++) {
            most = Math.max(most, mostReading(day).toSeconds());
        }
        return (sum(works).toSeconds() + most - 1) / most;
    }

    /** A work, in as few even parts as the roomiest day asks for; whole if it fits, or if no part would fit anywhere. */
    private List<Work> parts(Work work) {
        for (int of = 1; of <= MOST_PARTS; of++) {
            List<Work> parts = new ArrayList<>();
            Duration each = work.length().dividedBy(of);
            for (int i = 1; i <= of; i++) {
                boolean last = i == of;
                Duration length = last ? work.length().minus(each.multipliedBy(of - 1L)) : each;
                parts.add(of == 1 ? work : work.part(i, of, length));
            }
            Work longest = parts.get(parts.size() - 1);
            for (int day = 0; day < days.size(); day++) {
                if (session(day, List.of(longest)).fits(terms)) {
                    return parts;
                }
            }
        }
        return List.of(work);
    }

    private PlannedSession session(int day, List<Work> works) {
        Day d = days.get(dated ? day : 0);
        List<Work> sorted = new ArrayList<>(works);
        sorted.sort(HARDEST_FIRST);
        return PlannedSession.of(dated ? Optional.of(d.date()) : Optional.empty(), d.from(), d.length(), sorted, terms);
    }

    private List<String> why(List<Work> works, Placing placing) {
        List<String> why = new ArrayList<>();
        Duration room = Duration.ZERO;
        for (int day = 0; day < days.size(); day++) {
            Duration own = mostReading(day);
            room = room.plus(own);
            if (own.isZero()) {
                why.add((dated
                                ? days.get(day).date()
                                : "a session of " + Text.hours(days.get(day).length()))
                        + " is too short to read anything after " + Text.hours(terms.setUp())
                        + " of set-up; give it more hours, or set up faster");
            }
        }
        Duration needed = sum(works);
        if (dated && needed.compareTo(room) > 0) {
            why.add("there are " + Text.hours(needed) + " to record, and the days given hold " + Text.hours(room)
                    + " of reading with their breaks; add a day, or give the days more hours");
        } else if (!room.isZero()) {
            why.add(
                    "the time would do, but no day has room for the rest in one piece; add a day, or give one more hours");
        }
        if (placing.left().stream().anyMatch(work -> work.length().compareTo(terms.reading()) > 0)) {
            why.add("a session holds at most " + Text.hours(terms.reading())
                    + " of reading before voice and mind tire (see bookholder limits)");
        }
        return why.stream().distinct().toList();
    }

    /** The most reading that a day can hold, breaks left out. */
    private Duration mostReading(int day) {
        Duration room = days.get(day).length().minus(terms.setUp());
        Duration reading = Duration.ZERO;
        while (!room.isNegative() && !room.isZero()) {
            Duration stretch = room.compareTo(terms.stretch()) < 0 ? room : terms.stretch();
            reading = reading.plus(stretch);
            room = room.minus(stretch).minus(terms.pause());
        }
        return reading.compareTo(terms.reading()) < 0 ? reading : terms.reading();
    }

    static Duration sum(List<Work> works) {
        return works.stream().map(Work::length).reduce(Duration.ZERO, Duration::plus);
    }
}
