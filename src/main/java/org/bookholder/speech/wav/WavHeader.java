package org.bookholder.speech.wav;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * Writes the header of a WAV file: one channel, 16-bit PCM, little-endian. {@link #of} makes a whole header of 44
 * bytes; {@link #begin}, {@link #chunk} and {@link #format} make its parts, for a file with further chunks.
 *
 * <p>While a take is being written, the sizes in its header lag behind, and if the program is killed they stay wrong;
 * only the file's length can be trusted.
 *
 * <p>Layout from "Multimedia Programming Interface and Data Specifications 1.0" (IBM and Microsoft, 1991). {@link
 * WavParser} reads files from other programs.
 */
public final class WavHeader {
    /** Bytes that a sample takes. */
    public static final int BYTES_PER_SAMPLE = 2;

    /** Bytes of {@link #begin}. */
    public static final int BEGIN_BYTES = 12;

    /** The most bytes that can follow {@link #begin}: the largest unsigned 32-bit number, minus four. */
    public static final long MOST = 0xFFFF_FFFFL - 4;

    /** Bytes of {@link #format}. */
    public static final int FORMAT_BYTES = 32;

    /** Bytes of a whole header. */
    public static final int BYTES = BEGIN_BYTES + FORMAT_BYTES;

    /** The most bytes of samples that both size fields of a whole header can express, in whole samples. */
    public static final long MAX_DATA = MOST - FORMAT_BYTES - 1;

    private static final int RIFF_SIZE_AT = 4;
    private static final int RATE_AT = 24;
    private static final int DATA_SIZE_AT = 40;

    private WavHeader() {}

    /**
     * A whole header for {@code rate} samples per second; {@code data} bytes of samples follow, at most {@link
     * #MAX_DATA}.
     */
    public static byte[] of(int rate, long data) {
        return ByteBuffer.allocate(BYTES)
                .put(begin(FORMAT_BYTES + data))
                .put(format(rate, data))
                .array();
    }

    /** The beginning of a file; {@code rest} bytes follow, at most {@link #MOST}. */
    public static byte[] begin(long rest) {
        return buffer(BEGIN_BYTES)
                .put(name("RIFF"))
                .putInt((int) (rest + 4))
                .put(name("WAVE"))
                .array();
    }

    /** The beginning of a chunk of {@code size} bytes; its name has four ASCII characters. */
    public static byte[] chunk(String name, long size) {
        return buffer(8).put(name(name)).putInt((int) size).array();
    }

    /**
     * The chunk that describes the samples, {@code rate} per second, and the beginning of the chunk that holds {@code
     * data} bytes of samples.
     */
    public static byte[] format(int rate, long data) {
        return buffer(FORMAT_BYTES)
                .put(chunk("fmt ", 16))
                .putShort((short) 1)
                .putShort((short) 1)
                .putInt(rate)
                .putInt(rate * BYTES_PER_SAMPLE)
                .putShort((short) BYTES_PER_SAMPLE)
                .putShort((short) (8 * BYTES_PER_SAMPLE))
                .put(chunk("data", data))
                .array();
    }

    /** Corrects the two sizes of a file that begins with a whole header. */
    public static void patch(RandomAccessFile file, long data) throws IOException {
        file.seek(RIFF_SIZE_AT);
        file.write(buffer(4).putInt((int) (data + BYTES - 8)).array());
        file.seek(DATA_SIZE_AT);
        file.write(buffer(4).putInt((int) data).array());
    }

    /**
     * Makes the sizes in the header agree with the file's length; leaves a file alone that does not begin with a whole
     * header.
     */
    public static void repair(RandomAccessFile file) throws IOException {
        Optional<ByteBuffer> header = read(file.getChannel());
        if (header.isEmpty()) {
            return;
        }
        long data = Math.min(MAX_DATA, wholeSamples(file.length()) * BYTES_PER_SAMPLE);
        if (Integer.toUnsignedLong(header.get().getInt(DATA_SIZE_AT)) != data) {
            file.setLength(BYTES + data);
            patch(file, data);
            file.getChannel().force(false);
        }
    }

    /** Samples per second; empty if the file does not begin with a whole header. */
    public static Optional<Integer> rate(FileChannel file) throws IOException {
        return read(file).map(h -> h.getInt(RATE_AT)).filter(rate -> rate > 0);
    }

    /** The rate that a damaged header still gives in two fields that agree, as samples and as bytes a second. */
    public static Optional<Integer> rateLeft(FileChannel file) throws IOException {
        ByteBuffer header = firstBytes(file);
        int rate = header.getInt(RATE_AT);
        boolean agree = rate > 0 && header.getInt(RATE_AT + Integer.BYTES) == rate * BYTES_PER_SAMPLE;
        return agree ? Optional.of(rate) : Optional.empty();
    }

    /** How many samples a file of that length holds, not counting a half-written last one. */
    public static long wholeSamples(long fileLength) {
        return Math.max(0, fileLength - BYTES) / BYTES_PER_SAMPLE;
    }

    private static Optional<ByteBuffer> read(FileChannel file) throws IOException {
        ByteBuffer header = firstBytes(file);
        if (header.hasRemaining()) {
            return Optional.empty();
        }
        // The rate determines everything except the sizes, so this also tells our header from any other WAV header.
        ByteBuffer expected = ByteBuffer.wrap(of(header.getInt(RATE_AT), 0)).order(ByteOrder.LITTLE_ENDIAN);
        expected.putInt(RIFF_SIZE_AT, header.getInt(RIFF_SIZE_AT)).putInt(DATA_SIZE_AT, header.getInt(DATA_SIZE_AT));
        return header.rewind().equals(expected) ? Optional.of(header) : Optional.empty();
    }

    /** As many bytes as a header has; there is room left in the buffer if the file is shorter. */
    private static ByteBuffer firstBytes(FileChannel file) throws IOException {
        ByteBuffer bytes = buffer(BYTES);
        while (bytes.hasRemaining() && file.read(bytes, bytes.position()) >= 0) {
            // A read may return less than was asked for.
        }
        return bytes;
    }

    private static ByteBuffer buffer(int bytes) {
        return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static byte[] name(String name) {
        return name.getBytes(StandardCharsets.US_ASCII);
    }
}
