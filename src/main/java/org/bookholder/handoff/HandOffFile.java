package org.bookholder.handoff;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import org.bookholder.problem.ProblemException;

/**
 * A file to be written.
 *
 * @param name its name, without a folder
 * @param content what it holds
 */
public record HandOffFile(String name, Content content) {
    /** A text file in UTF-8. */
    public static HandOffFile text(String name, Text text) {
        return new HandOffFile(name, out -> {
            Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            text.write(writer);
            writer.flush();
        });
    }

    /** What a file holds. */
    @FunctionalInterface
    public interface Content {
        /**
         * Writes it.
         *
         * @throws IOException if {@code out} cannot be written
         * @throws ProblemException if what it is written from cannot be read
         */
        void write(OutputStream out) throws IOException, ProblemException;
    }

    /** What a text file holds. */
    @FunctionalInterface
    public interface Text {
        /** Writes it. */
        void write(Appendable out) throws IOException;
    }
}
