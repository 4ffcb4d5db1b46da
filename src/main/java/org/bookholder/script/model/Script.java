package org.bookholder.script.model;

import java.util.List;

/**
 * One lesson's script: the settings from its front matter, and everything that the presenter sees, in order.
 *
 * @param title the lesson's title: from the front matter, otherwise its first heading, otherwise the file's name @param
 *     source origin of the script, for messages: usually the file's path as given
 * @param settings target pace, language and how lines are broken
 * @param elements the lines to be read and the directions between them, in script order
 * @param facts the statements that must be checked again some day, in script order
 * @param covers the pictures that are shown in the film over the voice, in script order
 */
public record Script(
        String title,
        String source,
        ScriptSettings settings,
        List<ScriptElement> elements,
        List<AgeingFact> facts,
        List<Cover> covers) {
    /** Copies the lists. */
    public Script {
        elements = List.copyOf(elements);
        facts = List.copyOf(facts);
        covers = List.copyOf(covers);
    }

    /** A script without facts that age and without pictures. */
    public Script(String title, String source, ScriptSettings settings, List<ScriptElement> elements) {
        this(title, source, settings, elements, List.of(), List.of());
    }

    /** The same script with other settings. */
    public Script with(ScriptSettings other) {
        return new Script(title, source, other, elements, facts, covers);
    }

    /** The lines to be read, in order; line {@code n} (from 1) is at index {@code n - 1}. */
    public List<ScriptLine> lines() {
        return elements.stream()
                .filter(ScriptLine.class::isInstance)
                .map(ScriptLine.class::cast)
                .toList();
    }

    /** Number of words as spoken, by the preferred spoken form of each word; used for pace and running time. */
    public int spokenWords() {
        return lines().stream().mapToInt(ScriptLine::spokenWords).sum();
    }
}
