package org.bookholder.files;

import java.io.IOException;
import java.io.OutputStream;
import org.bookholder.problem.ProblemException;

/** The content of a file. */
@FunctionalInterface
public interface Content {
    /**
     * Writes the content; called once. Leaves the stream open.
     *
     * @throws IOException if {@code out} cannot be written
     * @throws ProblemException if the source of the content cannot be read
     */
    void write(OutputStream out) throws IOException, ProblemException;
}
