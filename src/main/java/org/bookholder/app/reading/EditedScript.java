package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.source.Manuscript;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.SpokenHabits;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.script.pronounce.Vocabulary;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.SpeakerChoice;

/**
 * A lesson's file, which may be edited while it is read.
 *
 * @param file the file
 * @param speakers those whose lines are read, as {@link SpeakerChoice} puts them before the text
 * @param habits how its author says things
 * @param vocabulary the recogniser's vocabulary
 * @param folder the session's folder
 */
public record EditedScript(
        Path file, List<String> speakers, SpokenHabits habits, Vocabulary vocabulary, SessionFolder folder)
        implements Manuscript {
    /** Copies the list. */
    public EditedScript {
        speakers = List.copyOf(speakers);
    }

    @Override
    public String text() throws ProblemException {
        return SpeakerChoice.in(ScriptReader.text(file), speakers);
    }

    @Override
    public PreparedScript prepare(String text) throws ProblemException {
        return ScriptPreparer.prepare(ScriptFile.parse(text, file.toString()), habits, vocabulary);
    }

    @Override
    public void keep(String text) throws ProblemException {
        folder.keepScript(file.toString(), text);
    }
}
