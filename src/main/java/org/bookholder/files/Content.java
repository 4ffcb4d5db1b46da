package org.bookholder.files;

import java.io.IOException;
import java.io.OutputStream;
import org.bookholder.problem.ProblemException;

/** What a file holds. */
@FunctionalInterface
public interface Content {
    /**
     * Writes it, once, and leaves the stream open.
     *
     * @throws IOException if {@code out} cannot be written
     * @throws ProblemException if the content's own source cannot be read
     */
    void write(OutputStream out) throws IOException, ProblemException;
}
