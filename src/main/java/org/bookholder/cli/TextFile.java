package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.problem.ProblemException;

/** Writes a text file that an option names. */
final class TextFile {
    private TextFile() {}

    /**
     * Writes the file completely or not at all.
     *
     * @param what what the text is, for messages, for example "the page"
     */
    static void write(Path file, String what, String text) throws ProblemException {
        try {
            new AtomicFiles(Access.SYSTEM_DEFAULT).write(file, text);
        } catch (IOException e) {
            throw new ProblemException(
                    what + " cannot be written", file.toString(), "name a file in a folder that you may write", e);
        }
    }
}
