package org.bookholder.app.reading;

import java.nio.file.Path;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.source.Manuscript;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.script.pronounce.Vocabulary;
import org.bookholder.script.source.ScriptReader;

/**
 * A lesson's file, which may be edited while it is read.
 *
 * @param file the file
 * @param vocabulary the recogniser's vocabulary
 * @param folder the session's folder
 */
public record EditedScript(Path file, Vocabulary vocabulary, SessionFolder folder) implements Manuscript {
    @Override
    public String text() throws ProblemException {
        return ScriptReader.text(file);
    }

    @Override
    public PreparedScript prepare(String text) throws ProblemException {
        return ScriptPreparer.prepare(ScriptFile.parse(text, file.toString()), vocabulary);
    }

    @Override
    public void keep(String text) throws ProblemException {
        folder.keepScript(file.toString(), text);
    }
}
