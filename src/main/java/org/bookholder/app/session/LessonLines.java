package org.bookholder.app.session;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.session.Decision;
import org.bookholder.session.SessionState;

/** A lesson's lines in sessions that may have been read from an earlier text of it. */
public final class LessonLines {
    private LessonLines() {}

    /** From a session's line numbers to the lesson's: the same texts, those that stand there several times in their order. */
    public static Map<Integer, Integer> numbers(Script session, Script lesson) {
        Map<String, List<Integer>> places = new HashMap<>();
        lesson.lines()
                .forEach(line -> places.computeIfAbsent(line.text(), none -> new ArrayList<>())
                        .add(line.number()));
        Map<Integer, Integer> numbers = new HashMap<>();
        for (ScriptLine line : session.lines()) {
            List<Integer> left = places.getOrDefault(line.text(), List.of());
            if (!left.isEmpty()) {
                numbers.put(line.number(), left.remove(0));
            }
        }
        return numbers;
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
