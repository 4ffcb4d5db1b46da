package org.bookholder.speech.wav;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * What stands before the samples of a WAV file that the program writes: one channel, 16-bit PCM, little-endian.
 *
 * <p>Layout from "Multimedia Programming Interface and Data Specifications 1.0" (IBM and Microsoft, 1991).
 */
public final class WavLayout {
    /** Bytes that a sample takes. */
    public static final int BYTES_PER_SAMPLE = 2;

    /** Bytes of {@link #begin}. */
    public static final int BEGIN_BYTES = 12;

    /** The most bytes that can follow on {@link #begin}: what an unsigned size of 32 bits can tell, less four. */
    public static final long MOST = 0xFFFF_FFFFL - 4;

    /** Bytes of {@link #format}. */
    public static final int FORMAT_BYTES = 32;

    private WavLayout() {}

    /** The file's beginning; {@code rest} bytes follow on it, at most {@link #MOST}. */
    public static byte[] begin(long rest) {
        return buffer(BEGIN_BYTES)
                .put(name("RIFF"))
                .putInt((int) (rest + 4))
                .put(name("WAVE"))
                .array();
    }

    /** How a chunk begins that holds {@code size} bytes; its name is of four ASCII characters. */
    public static byte[] chunk(String name, long size) {
        return buffer(8).put(name(name)).putInt((int) size).array();
    }

    /** How samples are written, {@code rate} a second, and how the chunk of them begins, {@code data} bytes long. */
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

    private static ByteBuffer buffer(int bytes) {
        return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static byte[] name(String name) {
        return name.getBytes(StandardCharsets.US_ASCII);
    }
}
