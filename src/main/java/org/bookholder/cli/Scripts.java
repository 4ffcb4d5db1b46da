package org.bookholder.cli;

import java.nio.file.Path;
import java.util.Locale;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.Script;
import org.bookholder.script.ScriptReader;
import org.bookholder.script.ScriptReader.Format;

/** Reads scripts from files and from what a session kept of them. */
final class Scripts {
    private Scripts() {}

    /** The script that a session kept; its source says which format it is in. */
    static Script parse(String text, String source) throws ProblemException {
        String name = source.toLowerCase(Locale.ROOT);
        boolean markdown = name.endsWith(".md") || name.endsWith(".markdown");
        return ScriptReader.parse(text, source, markdown ? Format.MARKDOWN : Format.PLAIN_TEXT);
    }

    static Script read(Path file) throws ProblemException {
        return ScriptReader.read(file);
    }
}
