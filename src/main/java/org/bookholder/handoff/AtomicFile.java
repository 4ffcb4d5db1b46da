package org.bookholder.handoff;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/**
 * Writes a text file so that at any moment either the old one or the whole new one is there. UTF-8.
 *
 * <p>The text goes to a file beside it, which takes its name when all is written; if anything fails, it is removed.
 */
public final class AtomicFile {
    private final Move move;

    /** Creates a writer that renames files. */
    public AtomicFile() {
        this(AtomicFile::rename);
    }

    AtomicFile(Move move) {
        this.move = move;
    }

    /** Writes {@code file}; {@code content} is called once. */
    public void write(Path file, Content content) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null) {
            throw new IllegalArgumentException("file (" + file + ") must not be a root folder");
        }
        Path draft = Files.createTempFile(folder, "." + file.getFileName(), ".part");
        try {
            try (Writer out = Files.newBufferedWriter(draft, StandardCharsets.UTF_8)) {
                content.write(out);
            }
            move.move(draft, file);
        } finally {
            Files.deleteIfExists(draft);
        }
    }

    static void rename(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** What is written. */
    @FunctionalInterface
    public interface Content {
        /** Writes it. */
        void write(Appendable out) throws IOException;
    }

    /** Gives a file its name; passed in so that a test can make it fail. */
    @FunctionalInterface
    interface Move {
        void move(Path from, Path to) throws IOException;
    }
}
