package org.bookholder.handoff.sound;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.UUID;

/**
 * The broadcast extension of a WAV file, version 1: field sizes from EBU Tech 3285.
 *
 * @param description description for people, at most 256 ASCII characters
 * @param reference identifies this recording, at most 32 characters
 * @param began local date and time of its first sample
 * @param rate samples a second
 */
record Bext(String description, String reference, LocalDateTime began, int rate) {
    private static final int FIXED = 602;
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("uuuu-MM-dd", Locale.ROOT);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH-mm-ss", Locale.ROOT);
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("uuuuMMddHHmmssSSS", Locale.ROOT);
    private static final long NANOS = 1_000_000_000;

    byte[] bytes() {
        byte[] history = ("A=PCM,F=" + rate + ",W=16,M=mono,T=Bookholder\r\n").getBytes(StandardCharsets.US_ASCII);
        ByteBuffer out = ByteBuffer.allocate(FIXED + history.length).order(ByteOrder.LITTLE_ENDIAN);
        text(out, description, 256);
        text(out, "Bookholder", 32);
        text(out, reference, 32);
        text(out, DATE.format(began), 10);
        text(out, TIME.format(began), 8);
        // The low word comes first, so in little-endian order this is one 64-bit number.
        out.putLong(samplesSinceMidnight(began, rate));
        out.putShort((short) 1);
        out.position(FIXED);
        out.put(history);
        return out.array();
    }

    /**
     * A reference of 32 characters that no two recordings share: our letters, date and time to the millisecond, and a digest
     * of the recording's name.
     */
    static String reference(String name, LocalDateTime began) {
        UUID named = UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
        String digest = named.toString().replace("-", "").substring(0, 12);
        return "BKH" + MOMENT.format(began) + digest;
    }

    /** The time reference. */
    static long samplesSinceMidnight(LocalDateTime time, int rate) {
        long nanos = time.toLocalTime().toNanoOfDay();
        return nanos / NANOS * rate + (nanos % NANOS * rate + NANOS / 2) / NANOS;
    }

    private static void text(ByteBuffer out, String text, int length) {
        byte[] ascii = text.getBytes(StandardCharsets.US_ASCII);
        int used = Math.min(length, ascii.length);
        out.put(ascii, 0, used).position(out.position() + length - used);
    }
}
