package org.bookholder.app.session;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.script.source.SpeakerChoice;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/**
 * A script and its text.
 *
 * @param script the parsed script
 * @param text the file's content
 */
public record ScriptFile(Script script, String text) {
    /** Reads a script's file. */
    public static ScriptFile read(Path file) throws ProblemException {
        return read(file, List.of());
    }

    /**
     * Reads a script's file.
     *
     * @param speakers those whose lines are read; empty if the script's own setting counts
     */
    public static ScriptFile read(Path file, List<String> speakers) throws ProblemException {
        String text = SpeakerChoice.in(ScriptReader.text(file), speakers);
        return new ScriptFile(parse(text, file.toString()), text);
    }

    /**
     * The event that opens a session with this script at {@code when}, at position {@code at} in its audio. It names the file so that it
     * is found from any folder.
     */
    public SessionEvent.Opened opened(StreamTime at, Instant when) {
        SessionEvent.Opened opened = SessionEvent.Opened.of(at, when, script, text);
        String file = Path.of(opened.source()).toAbsolutePath().normalize().toString();
        return new SessionEvent.Opened(at, when, opened.title(), file, text, opened.lines());
    }

    /** Parses a text that was valid before; the source's name determines the markup. */
    public static Script parse(String text, String source) throws ProblemException {
        return ScriptReader.parse(text, source, Format.of(source));
    }
}
