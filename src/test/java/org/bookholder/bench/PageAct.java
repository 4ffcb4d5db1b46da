package org.bookholder.bench;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Something that a person did on a page of the desk, as the page showed it then.
 *
 * @param lesson the title that was shown
 * @param name what the act's button said, or "Note" for a note
 * @param lines the lines that it may have meant: more than one if another line was shown just before
 * @param text what was written; empty if nothing was
 */
record PageAct(String lesson, String name, List<Integer> lines, String text) {
    /** Copies the list. */
    PageAct {
        lines = List.copyOf(lines);
    }

    /** Reads what the page has written down. */
    static List<PageAct> all(JsonNode written) {
        List<PageAct> acts = new ArrayList<>();
        for (JsonNode act : written) {
            List<Integer> lines = new ArrayList<>();
            act.path("lines").forEach(line -> lines.add(line.asInt()));
            acts.add(new PageAct(
                    act.path("lesson").asText(),
                    act.path("name").asText(),
                    lines,
                    act.path("text").asText()));
        }
        return acts;
    }

    boolean marks() {
        return name.startsWith("Mark line ");
    }

    boolean notes() {
        return name.equals("Note");
    }

    boolean undoes() {
        return name.startsWith("Undo");
    }

    /** Whether the page's list of what was not done means this act. */
    boolean isNamedIn(String sentence) {
        if (notes()) {
            return sentence.contains("(" + text + ")");
        }
        return undoes()
                ? sentence.contains("undo")
                : lines.stream()
                        .anyMatch(line -> sentence.matches(String.format(Locale.ROOT, ".*mark on line %d\\b.*", line)));
    }
}
