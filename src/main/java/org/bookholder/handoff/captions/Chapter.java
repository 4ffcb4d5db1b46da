package org.bookholder.handoff.captions;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.timing.StreamTime;

/**
 * A chapter of a film.
 *
 * @param start when it begins
 * @param title its title on one line
 */
public record Chapter(StreamTime start, String title) {
    /** Why there are none, for people. */
    public static final String NONE = "No chapters: the script has no headings, and each chapter begins at one";

    /** Whether a script has headings, so that its films have chapters. */
    public static boolean wanted(Script script) {
        return script.elements().stream()
                .anyMatch(element -> element instanceof Direction direction && direction.heading());
    }

    /**
     * The chapters of a film by the headings of its script. The first begins with the film (common practice: sites that list
     * chapters want it so); a heading of which no line is in the film makes none. Empty if the script has no headings.
     *
     * @param spoken what is said in the film
     */
    public static List<Chapter> of(Script script, List<SpokenLine> spoken) {
        List<Chapter> chapters = new ArrayList<>();
        String title = script.title();
        List<Integer> lines = new ArrayList<>();
        for (ScriptElement element : script.elements()) {
            if (element instanceof Direction direction && direction.heading()) {
                add(chapters, title, lines, spoken);
                title = direction.text();
                lines.clear();
            } else if (element instanceof ScriptLine line) {
                lines.add(line.number());
            }
        }
        add(chapters, title, lines, spoken);
        chapters.sort((a, b) -> a.start().compareTo(b.start()));
        if (!wanted(script) || chapters.isEmpty()) {
            return List.of();
        }
        chapters.set(0, new Chapter(StreamTime.ZERO, chapters.get(0).title()));
        return chapters;
    }

    private static void add(List<Chapter> chapters, String title, List<Integer> lines, List<SpokenLine> spoken) {
        spoken.stream()
                .filter(line -> lines.contains(line.line()))
                .map(SpokenLine::start)
                .min(StreamTime::compareTo)
                .ifPresent(start -> chapters.add(new Chapter(start, title)));
    }
}
