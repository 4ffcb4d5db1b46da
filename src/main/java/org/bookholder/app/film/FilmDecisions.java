package org.bookholder.app.film;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.bookholder.app.course.LessonPlace;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.LessonLines;
import org.bookholder.app.session.SessionRemarks;
import org.bookholder.app.session.StoredSession;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.session.Decision;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionState;

/** Writes decisions about a film's lines into the journals of the sessions that have them. */
public final class FilmDecisions {
    /** Who decides: the film's page can take back what this author did. */
    public static final String AUTHOR = SessionRemarks.FILM;

    private FilmDecisions() {}

    /** The session in which a line is decided about: the last that has it. */
    record Home(int session, int line) {}

    /**
     * Where each line of a lesson is decided about, by its number in the lesson; a line that is new since the last session is
     * not there.
     *
     * @param sessions the lesson's sessions, the oldest first
     */
    static Map<Integer, Home> homes(Script lesson, List<SessionState> sessions) {
        Map<Integer, Home> homes = new TreeMap<>();
        for (int i = 0; i < sessions.size(); i++) {
            int session = i;
            LessonLines.numbers(sessions.get(i).script(), lesson)
                    .forEach((own, line) -> homes.put(line, new Home(session, own)));
        }
        return homes;
    }

    /**
     * Leaves lines out on purpose, until that is undone. Those that are left out already stay so.
     *
     * @return the lines that no session has, so that nothing can be written about them
     * @throws ProblemException if there is no such line, or a session is open elsewhere or cannot be written
     */
    static Set<Integer> leaveOut(LessonPlace place, Set<Integer> lines, Environment here) throws ProblemException {
        List<SessionState> states = new ArrayList<>();
        for (Path session : place.sessions()) {
            try (StoredSession kept = StoredSession.open(here, session)) {
                states.add(kept.state());
            }
        }
        Script lesson =
                place.lesson().orElseGet(() -> states.get(states.size() - 1).script());
        int count = lesson.lines().size();
        Set<Integer> already = LessonLines.leftOut(lesson, states);
        Map<Integer, Home> homes = homes(lesson, states);
        Set<Integer> unknown = new TreeSet<>();
        Map<Integer, List<Remark>> remarks = new LinkedHashMap<>();
        for (int line : new TreeSet<>(lines)) {
            if (line < 1 || line > count) {
                throw new ProblemException(
                        "there is no line " + line + " to leave out", lesson.source(), "name lines from 1 to " + count);
            }
            Optional<Home> home = Optional.ofNullable(homes.get(line));
            if (home.isEmpty()) {
                unknown.add(line);
            } else if (!already.contains(line)) {
                remarks.computeIfAbsent(home.get().session(), none -> new ArrayList<>())
                        .add(new Remark.Decided(home.get().line(), Decision.Choice.LEAVE_OUT, 0, 0));
            }
        }
        for (Map.Entry<Integer, List<Remark>> session : remarks.entrySet()) {
            SessionRemarks.write(
                    place.sessions().get(session.getKey()), states.get(session.getKey()), session.getValue(), here);
        }
        return unknown;
    }
}
