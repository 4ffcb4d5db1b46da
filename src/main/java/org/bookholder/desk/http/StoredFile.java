package org.bookholder.desk.http;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;

/**
 * A file that is served piece by piece.
 *
 * @param path the file
 * @param length how many of its bytes are served
 * @param reader gives some of them
 */
record StoredFile(Path path, long length, Reader reader) {
    /** Gives some of a file's bytes. */
    @FunctionalInterface
    interface Reader {
        /** The bytes from {@code from} on, {@code count} of them. */
        ByteBuffer read(long from, int count) throws ProblemException;
    }

    /** A file that is not written any more. */
    static StoredFile of(Path path) throws ProblemException {
        try {
            return new StoredFile(path, Files.size(path), (from, count) -> read(path, from, count));
        } catch (IOException e) {
            throw DiskProblems.reading(path, e);
        }
    }

    private static ByteBuffer read(Path path, long from, int count) throws ProblemException {
        ByteBuffer bytes = ByteBuffer.allocate(count);
        try (FileChannel file = FileChannel.open(path)) {
            while (bytes.hasRemaining() && file.read(bytes, from + bytes.position()) >= 0) {
                // A read may return less than was asked for.
            }
        } catch (IOException e) {
            throw DiskProblems.reading(path, e);
        }
        return bytes.flip();
    }
}
