package org.bookholder.handoff.sound;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.wav.WavHeader;

/** Writes a WAV file as {@link WavHeader} does, with further chunks that are known before the samples are written. */
final class WavChunks {
    private WavChunks() {}

    /** A chunk other than {@code fmt} and {@code data}. */
    static final class Chunk {
        private final String name;
        private final byte[] bytes;

        /** Creates a chunk whose name has four ASCII characters; its bytes are not copied. */
        Chunk(String name, byte[] bytes) {
            this.name = name;
            this.bytes = bytes;
        }

        private int size() {
            return 8 + bytes.length + bytes.length % 2;
        }
    }

    /**
     * Writes everything that comes before the samples.
     *
     * @throws ProblemException if the file would be longer than its 32-bit sizes can express; then nothing is written
     */
    static void begin(OutputStream out, int rate, long samples, List<Chunk> chunks)
            throws IOException, ProblemException {
        long data = samples * WavHeader.BYTES_PER_SAMPLE;
        long rest = chunks.stream().mapToLong(Chunk::size).sum() + WavHeader.FORMAT_BYTES + data;
        if (rest > WavHeader.MOST) {
            long hours = samples / rate / 3600;
            throw new ProblemException(
                    "a WAV file holds 4 GB at most, which " + hours + " hours at " + rate + " Hz are beyond",
                    "the hand-off's sound",
                    "leave the sound out of the hand-off");
        }
        out.write(WavHeader.begin(rest));
        for (Chunk chunk : chunks) {
            out.write(WavHeader.chunk(chunk.name, chunk.bytes.length));
            out.write(chunk.bytes);
            out.write(new byte[chunk.bytes.length % 2]);
        }
        out.write(WavHeader.format(rate, data));
    }

    /** Writes samples. */
    static void samples(OutputStream out, short[] samples) throws IOException {
        ByteBuffer bytes =
                ByteBuffer.allocate(samples.length * WavHeader.BYTES_PER_SAMPLE).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asShortBuffer().put(samples);
        out.write(bytes.array());
    }
}
