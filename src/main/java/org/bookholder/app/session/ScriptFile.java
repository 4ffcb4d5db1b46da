package org.bookholder.app.session;

import java.nio.file.Path;
import java.time.Instant;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/**
 * A script and its text.
 *
 * @param script what is read
 * @param text what the file holds
 */
public record ScriptFile(Script script, String text) {
    /** Reads a script's file. */
    public static ScriptFile read(Path file) throws ProblemException {
        String text = ScriptReader.text(file);
        return new ScriptFile(parse(text, file.toString()), text);
    }

    /** The event that says that this is read from {@code when} on, {@code at} into the session's audio. */
    public SessionEvent.Opened opened(StreamTime at, Instant when) {
        return new SessionEvent.Opened(at, when, script.title(), script.source(), text);
    }

    /** The script of a text that was read before; its source tells how it is marked up. */
    public static Script parse(String text, String source) throws ProblemException {
        return ScriptReader.parse(text, source, Format.of(source));
    }
}
