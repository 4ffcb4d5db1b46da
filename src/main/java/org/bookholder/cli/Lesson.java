package org.bookholder.cli;

import java.nio.file.Path;
import java.util.Locale;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.Script;
import org.bookholder.script.ScriptReader;
import org.bookholder.script.ScriptReader.Format;

/**
 * A script and its text.
 *
 * @param script what is read
 * @param text what the file holds
 */
record Lesson(Script script, String text) {
    /** Reads a script's file. */
    static Lesson read(Path file) throws ProblemException {
        String text = ScriptReader.text(file);
        return new Lesson(parse(text, file.toString()), text);
    }

    /** The script of a text that was read before; its source tells how it is marked up. */
    static Script parse(String text, String source) throws ProblemException {
        String name = source.toLowerCase(Locale.ROOT);
        boolean markdown = name.endsWith(".md") || name.endsWith(".markdown");
        return ScriptReader.parse(text, source, markdown ? Format.MARKDOWN : Format.PLAIN_TEXT);
    }
}
