package org.bookholder.handoff;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import org.bookholder.files.Content;

/**
 * A file to be written.
 *
 * @param name its name, without a folder
 * @param content its content
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

    /** The content of a text file. */
    @FunctionalInterface
    public interface Text {
        /** Writes it. */
        void write(Appendable out) throws IOException;
    }
}
