package org.bookholder.course;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;

/** Finds the lines of a session in its lesson, of which it may be an earlier text, or the part of one speaker. */
public final class SameLines {
    private SameLines() {}

    /** A wording in the mouth of somebody, who is named in capitals; nobody is an empty text. */
    private record Wording(String speaker, String text) {
        Wording(ScriptLine line) {
            this(line.speaker().toUpperCase(Locale.ROOT), line.text());
        }
    }

    /**
     * From a session's line numbers to the lesson's. A line is the same if its text is, and its speaker; those that stand there several times
     * are taken in their order. A line to which a name was added since, or whose speaker has another name now, is still the same.
     */
    public static Map<Integer, Integer> numbers(Script session, Script lesson) {
        Map<Wording, Deque<ScriptLine>> places = new HashMap<>();
        lesson.lines()
                .forEach(line -> places.computeIfAbsent(new Wording(line), none -> new ArrayDeque<>())
                        .add(line));
        Map<Integer, Integer> numbers = new HashMap<>();
        List<ScriptLine> rest = new ArrayList<>();
        for (ScriptLine line : session.lines()) {
            Deque<ScriptLine> left = places.getOrDefault(new Wording(line), new ArrayDeque<>());
            if (left.isEmpty()) {
                rest.add(line);
            } else {
                numbers.put(line.number(), left.remove().number());
            }
        }
        Set<String> shown = shown(session);
        for (ScriptLine line : rest) {
            lesson.lines().stream()
                    .filter(other -> other.text().equals(line.text()) && !numbers.containsValue(other.number()))
                    .filter(other -> line.speaker().isEmpty()
                            || !shown.contains(other.speaker().toUpperCase(Locale.ROOT)))
                    .findFirst()
                    .ifPresent(other -> numbers.put(line.number(), other.number()));
        }
        return numbers;
    }

    /** What a script shows as it is, in capitals: among it the names of those who speak in it. */
    private static Set<String> shown(Script script) {
        Set<String> shown = new HashSet<>();
        for (ScriptElement element : script.elements()) {
            shown.add((element instanceof ScriptLine line ? line.speaker() : element.text()).toUpperCase(Locale.ROOT));
        }
        shown.remove("");
        return shown;
    }
}
