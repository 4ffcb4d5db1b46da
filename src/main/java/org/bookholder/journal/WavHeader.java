package org.bookholder.journal;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.util.Optional;
import org.bookholder.speech.wav.WavLayout;

/**
 * The 44 bytes before the samples of a take, as {@link WavLayout} has them. While a take is being written the sizes lag
 * behind, and after a kill they are wrong; the file's length is what counts.
 */
final class WavHeader {
    static final int BYTES = WavLayout.BEGIN_BYTES + WavLayout.FORMAT_BYTES;
    static final int BYTES_PER_SAMPLE = WavLayout.BYTES_PER_SAMPLE;

    /** The most sample bytes that both 32-bit sizes can tell, in whole samples. */
    static final long MAX_DATA = WavLayout.MOST - WavLayout.FORMAT_BYTES - 1;

    private static final int RIFF_SIZE_AT = 4;
    private static final int RATE_AT = 24;
    private static final int DATA_SIZE_AT = 40;

    private WavHeader() {}

    /** A header for {@code data} bytes of samples. */
    static byte[] of(int rate, long data) {
        return ByteBuffer.allocate(BYTES)
                .put(WavLayout.begin(WavLayout.FORMAT_BYTES + data))
                .put(WavLayout.format(rate, data))
                .array();
    }

    /** Corrects the two sizes of a file that has a header. */
    static void patch(RandomAccessFile file, long data) throws IOException {
        file.seek(RIFF_SIZE_AT);
        file.write(littleEndian(data + BYTES - 8));
        file.seek(DATA_SIZE_AT);
        file.write(littleEndian(data));
    }

    /** Makes the sizes of a take's file agree with its length; leaves every other file as it is. */
    static void repair(RandomAccessFile file) throws IOException {
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

    /** Samples per second; empty if the file does not begin as a take does. */
    static Optional<Integer> rate(FileChannel file) throws IOException {
        return read(file).map(h -> h.getInt(RATE_AT)).filter(rate -> rate > 0);
    }

    /** How many samples a file of that length holds, a half-written last one left out. */
    static long wholeSamples(long fileLength) {
        return Math.max(0, fileLength - BYTES) / BYTES_PER_SAMPLE;
    }

    private static Optional<ByteBuffer> read(FileChannel file) throws IOException {
        ByteBuffer header = ByteBuffer.allocate(BYTES).order(ByteOrder.LITTLE_ENDIAN);
        while (header.hasRemaining() && file.read(header, header.position()) >= 0) {
            // A read may stop short of what was asked for.
        }
        if (header.hasRemaining()) {
            return Optional.empty();
        }
        // All but the sizes is given by the rate, so this also tells a take from any other WAV file.
        ByteBuffer expected = ByteBuffer.wrap(of(header.getInt(RATE_AT), 0)).order(ByteOrder.LITTLE_ENDIAN);
        expected.putInt(RIFF_SIZE_AT, header.getInt(RIFF_SIZE_AT)).putInt(DATA_SIZE_AT, header.getInt(DATA_SIZE_AT));
        return header.rewind().equals(expected) ? Optional.of(header) : Optional.empty();
    }

    private static byte[] littleEndian(long size) {
        return ByteBuffer.allocate(4)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putInt((int) size)
                .array();
    }
}
