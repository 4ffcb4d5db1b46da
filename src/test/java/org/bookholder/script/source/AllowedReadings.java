package org.bookholder.script.source;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.source.ScriptReader.Format;

/** Every way in which a line may be said. */
final class AllowedReadings {
    private AllowedReadings() {}

    /**
     * Each word's forms in their order, the line's preferred form first.
     *
     * @param text one line, with settings before it if it has any
     */
    static List<String> of(String text) throws ProblemException {
        List<String> said = List.of("");
        for (ScriptWord word : ScriptReader.parse(text, "x.txt", Format.PLAIN_TEXT)
                .lines()
                .get(0)
                .words()) {
            said = said.stream()
                    .flatMap(before -> word.spoken().stream().map(form -> before + " " + String.join(" ", form)))
                    .map(String::strip)
                    .toList();
        }
        return said;
    }

    /** The same of one line, in a language. */
    static List<String> of(String text, String language) throws ProblemException {
        return of("---\nlanguage: " + language + "\nlines: as-written\n---\n" + text);
    }
}
