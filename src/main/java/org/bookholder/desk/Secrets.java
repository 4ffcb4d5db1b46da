package org.bookholder.desk;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** Makes secrets, their digests and signatures, all as Base64 for addresses, and compares them. */
final class Secrets {
    private static final String SIGNATURE = "HmacSHA256";
    private static final String DIGEST = "SHA-256";

    private Secrets() {}

    /** A new secret of that many random bytes. */
    static String random(SecureRandom random, int bytes) {
        byte[] secret = new byte[bytes];
        random.nextBytes(secret);
        return text(secret);
    }

    /** By which a secret is known again, but can't be found out. */
    static String digest(String secret) {
        try {
            return text(MessageDigest.getInstance(DIGEST).digest(secret.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform must know " + DIGEST, e);
        }
    }

    /** The signature of a text, which only those can make who know the secret. */
    static String signature(String secret, String text) {
        try {
            Mac mac = Mac.getInstance(SIGNATURE);
            mac.init(new SecretKeySpec(secret.getBytes(StandardCharsets.UTF_8), SIGNATURE));
            return text(mac.doFinal(text.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform must know " + SIGNATURE, e);
        }
    }

    /** Compares in constant time. */
    static boolean same(String a, String b) {
        return MessageDigest.isEqual(a.getBytes(StandardCharsets.UTF_8), b.getBytes(StandardCharsets.UTF_8));
    }

    private static String text(byte[] bytes) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }
}
