package org.bookholder.film.plan;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** A short text by which a longer one is known again. */
public final class Fingerprint {
    private static final int BYTES = 16;

    private Fingerprint() {}

    /** The first half of the text's SHA-256, as 32 hexadecimal digits. */
    public static String of(String text) {
        try {
            byte[] sum = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(sum, 0, BYTES);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
