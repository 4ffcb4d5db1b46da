package org.bookholder.desk;

import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.HashSet;
import java.util.Set;

/** The codes with which other devices join: new each day, and as soon as someone is let out. Safe for use by several threads. */
final class JoinCodes {
    /** Letters and digits that are not easily confused. */
    private static final String LETTERS = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";

    /** Eight of them make about 850,000 million codes. */
    private static final int LENGTH = 8;

    /** For how long a code is good. */
    static final Duration GOOD = Duration.ofDays(1);

    private final InstantSource clock;
    private final SecureRandom random;
    private final Set<String> used = new HashSet<>();
    private Codes now;
    private Instant made;

    /**
     * A pair of codes.
     *
     * @param act for those who may act
     * @param look for those who may only look
     */
    record Codes(String act, String look) {}

    JoinCodes(InstantSource clock, SecureRandom random) {
        this.clock = clock;
        this.random = random;
        made = clock.instant();
        now = new Codes(code(), code());
    }

    /** The codes that are good now. */
    synchronized Codes now() {
        if (Duration.between(made, clock.instant()).compareTo(GOOD) >= 0) {
            renew();
        }
        return now;
    }

    /** Makes new ones; nobody joins with the old ones any more. */
    synchronized void renew() {
        made = clock.instant();
        now = new Codes(code(), code());
        used.clear();
    }

    /** Notes that a device has used a code; false if it has done so before. */
    synchronized boolean use(String code, String device) {
        return used.add(code + ' ' + device);
    }

    private String code() {
        StringBuilder code = new StringBuilder();
        for (int i = 0; i < LENGTH; i++) {
            code.append(i == LENGTH / 2 ? "-" : "").append(LETTERS.charAt(random.nextInt(LETTERS.length())));
        }
        return code.toString();
    }
}
