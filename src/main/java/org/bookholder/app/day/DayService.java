package org.bookholder.app.day;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.BreakLimits;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.app.session.StoredSession;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.SameLines;
import org.bookholder.course.board.Recording;
import org.bookholder.fatigue.EarlierReading;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.fatigue.FatigueLog;
import org.bookholder.fatigue.FatigueReport;
import org.bookholder.pace.RunningTime;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.session.DaySoFar;
import org.bookholder.session.LineCounts;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;

/** Counts a presenter's day over all sessions since the last long rest. */
public final class DayService {
    /** The presenter who is meant if none is named. */
    public static final String SOLE_PRESENTER = "presenter";

    private final Environment here;
    private final String presenter;
    private final PresenterSessions sessions;

    /** The days of a presenter, who is told from others by name. */
    public DayService(Environment here, String presenter) {
        this.here = here;
        this.presenter = presenter;
        this.sessions = new PresenterSessions(here, presenter);
    }

    /** Takes note that a session begins or goes on, so that the day's later ones count it. */
    public void opened(Path session) throws ProblemException {
        sessions.opened(session);
    }

    /** The sessions in which this presenter has read to a microphone on this machine; their folders, absolute. */
    public List<Path> sessions() throws ProblemException {
        return sessions.all();
    }

    /**
     * What was read on the day up to now in sessions other than this one; empty if that is nothing, or longer ago than the rest
     * after which a new day begins. A session that cannot be read is passed over.
     */
    public Optional<DaySoFar> before(Path session, FatigueLimits limits) throws ProblemException {
        Path self = session.toAbsolutePath().normalize();
        List<Path> all = sessions.all();
        for (int i = all.size() - 1; i >= 0; i--) {
            Optional<DaySoFar> day = all.get(i).equals(self) ? Optional.empty() : day(all.get(i));
            if (day.isPresent()) {
                // Each session goes on from the one before, so the last one has counted them all.
                return day.filter(
                        d -> Duration.between(d.until(), here.clock().instant()).compareTo(limits.recovery()) < 0);
            }
        }
        return Optional.empty();
    }

    private Optional<DaySoFar> day(Path session) {
        try (StoredSession stored = StoredSession.open(here, session)) {
            return stored.state().day();
        } catch (ProblemException unreadable) {
            return Optional.empty();
        }
    }

    /** The day as it stands now. */
    public Day today() throws ProblemException {
        FatigueLimits limits = BreakLimits.of(here);
        Instant now = here.clock().instant();
        List<Rolled> rolled = new ArrayList<>();
        List<String> unreadable = new ArrayList<>();
        List<Path> all = sessions.all();
        Instant earliest = now;
        boolean more = true;
        // From the last one back: what was opened before a session of another day is of another day too.
        for (int i = all.size() - 1; i >= 0 && more; i--) {
            Path session = all.get(i);
            try (StoredSession stored = StoredSession.open(here, session)) {
                SessionState state = stored.state();
                List<Take> takes = state.takes().all();
                if (!takes.isEmpty()) {
                    more = Duration.between(takes.get(takes.size() - 1).ended(), earliest)
                                    .compareTo(limits.recovery())
                            < 0;
                    earliest = takes.get(0).when().isBefore(earliest)
                            ? takes.get(0).when()
                            : earliest;
                    takes.forEach(take -> rolled.add(new Rolled(session, state, take)));
                }
            } catch (ProblemException e) {
                unreadable.add(e.getMessage());
            }
        }
        List<Rolled> day = day(rolled, limits, now);
        return new Day(
                presenter,
                sessions(day),
                Day.rests(
                        day.stream()
                                .map(r -> new Day.Span(r.take().when(), r.take().ended()))
                                .toList(),
                        limits.realBreak()),
                now,
                report(day, limits, now),
                unreadable);
    }

    /**
     * A take of a session.
     *
     * @param session where the session lies
     * @param state what became of it
     * @param take the take
     */
    private record Rolled(Path session, SessionState state, Take take) {}

    /** The takes since the last rest that is long enough for a new day, in order; none if that rest is now. */
    private static List<Rolled> day(List<Rolled> all, FatigueLimits limits, Instant now) {
        List<Rolled> late = new ArrayList<>(all);
        late.sort(Comparator.comparing((Rolled r) -> r.take().when()).reversed());
        List<Rolled> day = new ArrayList<>();
        Instant next = now;
        for (Rolled rolled : late) {
            if (Duration.between(rolled.take().ended(), next).compareTo(limits.recovery()) >= 0) {
                break;
            }
            day.add(0, rolled);
            next = rolled.take().when();
        }
        return day;
    }

    private static List<DaySession> sessions(List<Rolled> day) {
        List<DaySession> found = new ArrayList<>();
        Map<Path, Integer> pickups = pickups(day);
        day.stream().map(Rolled::session).distinct().forEach(session -> {
            List<Rolled> own =
                    day.stream().filter(r -> r.session().equals(session)).toList();
            SessionState state = own.get(0).state();
            found.add(new DaySession(
                    session,
                    state.script().title(),
                    own.get(0).take().when(),
                    own.get(own.size() - 1).take().ended(),
                    own.size(),
                    own.stream().map(DayService::onCamera).reduce(Duration.ZERO, Duration::plus),
                    LineCounts.of(state.lines().all()),
                    length(state),
                    pickups.getOrDefault(session, 0)));
        });
        return found;
    }

    /** How many lines are still to be picked up: each stands with the last session of its lesson that lists it. */
    private static Map<Path, Integer> pickups(List<Rolled> day) {
        Map<Path, RecordedSession> sessions = new LinkedHashMap<>();
        day.forEach(r -> sessions.put(r.session(), new RecordedSession(r.session(), r.state())));
        Map<Object, List<RecordedSession>> lessons = new LinkedHashMap<>();
        sessions.values()
                .forEach(session -> lessons.computeIfAbsent(
                                lesson(session.state().script()), none -> new ArrayList<>())
                        .add(session));
        Map<Path, Integer> found = new HashMap<>();
        for (List<RecordedSession> own : lessons.values()) {
            own.sort(Comparator.comparing(RecordedSession::began).reversed());
            Script script = script(own.get(0).state().script());
            Set<Integer> open = new HashSet<>(Recording.of(script, own).pickups());
            for (RecordedSession session : own) {
                Map<Integer, Integer> numbers =
                        SameLines.numbers(session.state().script(), script);
                int listed = (int) session.state().lines().pickups().stream()
                        .flatMap(notes -> Optional.ofNullable(numbers.get(notes.line())).stream())
                        .filter(open::remove)
                        .count();
                found.put(session.folder(), listed);
            }
        }
        return found;
    }

    /** What sessions of one lesson have in common: its file, or its text if nobody knows in which folder the file lay. */
    private static Object lesson(Script read) {
        Path file = Path.of(read.source());
        return file.isAbsolute() ? file : read;
    }

    /** The lesson's script as its file is now, with the lines of all who speak; the one that was read if the file is not there. */
    private static Script script(Script read) {
        if (!Path.of(read.source()).isAbsolute()) {
            return read;
        }
        try {
            return ScriptFile.read(Path.of(read.source()), List.of()).script();
        } catch (ProblemException gone) {
            return read;
        }
    }

    /** How long the lines that were read run, at the pace of the session; at the target pace while that is unknown. */
    private static Duration length(SessionState state) {
        double pace = state.measures().pace().lesson();
        long words = state.lines().all().stream()
                .filter(LineCounts::isRead)
                .mapToLong(notes -> state.line(notes.line()).spokenWords())
                .sum();
        double seconds = RunningTime.of(
                        words, pace > 0 ? pace : state.script().settings().targetPace())
                .seconds();
        return Duration.ofMillis(Math.round(1000 * seconds));
    }

    private static Duration onCamera(Rolled rolled) {
        Take take = rolled.take();
        Duration held = rolled.state().takes().holds().stream()
                .filter(hold ->
                        !hold.start().isBefore(take.start()) && !take.end().isBefore(hold.end()))
                .map(hold -> hold.end().since(hold.start()).toDuration())
                .reduce(Duration.ZERO, Duration::plus);
        return take.end().since(take.start()).toDuration().minus(held);
    }

    private static FatigueReport report(List<Rolled> day, FatigueLimits limits, Instant now) {
        Optional<DaySoFar> last =
                day.stream().flatMap(r -> r.state().day().stream()).max(Comparator.comparing(DaySoFar::until));
        if (last.isEmpty()) {
            return FatigueLog.report(limits, EarlierReading.NONE, Duration.ZERO);
        }
        Duration rest = Duration.between(last.get().until(), now);
        return FatigueLog.report(limits, last.get().reading(), rest.isNegative() ? Duration.ZERO : rest);
    }
}
