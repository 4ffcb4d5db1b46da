package org.bookholder.film.sound;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileChannel.MapMode;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;

/** Samples in a file of the work, as 32-bit numbers, the low byte first, so that a long film needs no memory. */
final class SampleFile {
    private static final int SIZE = Float.BYTES;

    private SampleFile() {}

    /** Writes samples one after another. Confined to one thread. */
    static final class Writer implements AutoCloseable {
        private static final int BUFFER = 1 << 16;

        private final Path file;
        private final FileChannel channel;
        private final ByteBuffer buffer = ByteBuffer.allocate(BUFFER * SIZE).order(ByteOrder.LITTLE_ENDIAN);
        private long count;

        Writer(Path file) throws ProblemException {
            this.file = file;
            try {
                channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            } catch (IOException e) {
                throw DiskProblems.writing(file, e);
            }
        }

        /** How many samples were written. */
        long count() {
            return count;
        }

        void write(float sample) throws ProblemException {
            if (!buffer.hasRemaining()) {
                flush();
            }
            buffer.putFloat(sample);
            count++;
        }

        private void flush() throws ProblemException {
            buffer.flip();
            try {
                while (buffer.hasRemaining()) {
                    channel.write(buffer);
                }
            } catch (IOException e) {
                throw DiskProblems.writing(file, e);
            }
            buffer.clear();
        }

        @Override
        public void close() throws ProblemException {
            try (channel) {
                flush();
            } catch (IOException e) {
                throw DiskProblems.writing(file, e);
            }
        }
    }

    /** The samples of a file, to be read in any order; at most half a thousand million, three hours at 48 kHz. */
    static FloatBuffer read(Path file) throws ProblemException {
        try (FileChannel channel = FileChannel.open(file)) {
            return channel.map(MapMode.READ_ONLY, 0, channel.size())
                    .order(ByteOrder.LITTLE_ENDIAN)
                    .asFloatBuffer();
        } catch (IOException e) {
            throw DiskProblems.reading(file, e);
        }
    }
}
