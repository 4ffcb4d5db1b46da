package org.bookholder.handoff.sound;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.bookholder.problem.ProblemException;

/**
 * A WAV file of one channel of 16-bit samples, whose chunks are known before the samples are written.
 *
 * <p>Layout from "Multimedia Programming Interface and Data Specifications 1.0" (IBM and Microsoft, 1991).
 */
final class WavChunks {
    private static final int BYTES_PER_SAMPLE = 2;

    /** The most that an unsigned size of 32 bits can tell. */
    private static final long LARGEST = 0xFFFF_FFFFL;

    private WavChunks() {}

    /** A chunk other than {@code fmt} and {@code data}. */
    static final class Chunk {
        private final String name;
        private final byte[] bytes;

        /** A chunk whose name is of four ASCII characters; its bytes are not copied. */
        Chunk(String name, byte[] bytes) {
            this.name = name;
            this.bytes = bytes;
        }

        private int size() {
            return 8 + bytes.length + bytes.length % 2;
        }
    }

    /**
     * Writes all that comes before the samples.
     *
     * @throws ProblemException if the file would be longer than its 32-bit sizes can tell; nothing is written then
     */
    static void begin(OutputStream out, int rate, long samples, List<Chunk> chunks)
            throws IOException, ProblemException {
        long data = samples * BYTES_PER_SAMPLE;
        long riff = 4 + 24 + 8 + data + chunks.stream().mapToLong(Chunk::size).sum();
        if (riff > LARGEST) {
            long hours = samples / rate / 3600;
            throw new ProblemException(
                    "a WAV file holds 4 GB at most, which " + hours + " hours at " + rate + " Hz are beyond",
                    "the hand-off's sound",
                    "leave it out, as in --only edl,otio,cut,captions,pickups,log");
        }
        out.write(ByteBuffer.allocate(12)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put(ascii("RIFF"))
                .putInt((int) riff)
                .put(ascii("WAVE"))
                .array());
        for (Chunk chunk : chunks) {
            out.write(ByteBuffer.allocate(8)
                    .order(ByteOrder.LITTLE_ENDIAN)
                    .put(ascii(chunk.name))
                    .putInt(chunk.bytes.length)
                    .array());
            out.write(chunk.bytes);
            out.write(new byte[chunk.bytes.length % 2]);
        }
        out.write(ByteBuffer.allocate(32)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put(ascii("fmt "))
                .putInt(16)
                .putShort((short) 1)
                .putShort((short) 1)
                .putInt(rate)
                .putInt(rate * BYTES_PER_SAMPLE)
                .putShort((short) BYTES_PER_SAMPLE)
                .putShort((short) 16)
                .put(ascii("data"))
                .putInt((int) data)
                .array());
    }

    /** Writes samples. */
    static void samples(OutputStream out, short[] samples) throws IOException {
        ByteBuffer bytes =
                ByteBuffer.allocate(samples.length * BYTES_PER_SAMPLE).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asShortBuffer().put(samples);
        out.write(bytes.array());
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
