package org.bookholder.app.session;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.bookholder.course.SameLines;
import org.bookholder.script.model.Script;
import org.bookholder.session.Decision;
import org.bookholder.session.SessionState;

/** A lesson's lines in sessions that may have been read from an earlier text of it. */
public final class LessonLines {
    private LessonLines() {}

    /** From a session's line numbers to the lesson's: see {@link SameLines}. */
    public static Map<Integer, Integer> numbers(Script session, Script lesson) {
        return SameLines.numbers(session, lesson);
    }

    /**
     * The lines that were left out on purpose, by the lesson's numbers. What was decided about a line in a later session counts
     * before what was decided in an earlier one.
     *
     * @param sessions the lesson's sessions, the oldest first
     */
    public static Set<Integer> leftOut(Script lesson, List<SessionState> sessions) {
        Set<Integer> leftOut = new TreeSet<>();
        for (SessionState session : sessions) {
            Map<Integer, Integer> numbers = numbers(session.script(), lesson);
            session.lines().all().forEach(notes -> {
                Optional<Integer> line = Optional.ofNullable(numbers.get(notes.line()));
                Optional<Decision> decision = notes.decision();
                if (line.isPresent() && decision.isPresent()) {
                    leftOut.remove(line.get());
                    if (notes.leftOut()) {
                        leftOut.add(line.get());
                    }
                }
            });
        }
        return leftOut;
    }
}
