package org.bookholder.desk;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.ArrayDeque;
import java.util.Base64;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.stream.Stream;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Checks join codes, and issues tokens that state what their holder may do. Wrong codes are counted, for each address
 * and in total, so that nobody can guess a code. Safe for use by several threads.
 */
public final class AccessControl {
    /** The most wrong codes from one address within {@link #WINDOW_NANOS}. */
    static final int FROM_ONE = 8;

    /** The most wrong codes from all addresses within {@link #WINDOW_NANOS}. */
    static final int FROM_ALL = 60;

    static final long WINDOW_NANOS = 300_000_000_000L;

    /** How long a ticket can be used. */
    static final long TICKET_NANOS = 60_000_000_000L;

    private static final int ADDRESSES = 1000;
    private static final String ALGORITHM = "HmacSHA256";

    private final DeskCredentials keys;
    private final boolean open;
    private final SecureRandom random;
    private final LongSupplier nanoTime;
    private final Deque<Long> all = new ArrayDeque<>();
    private final Map<String, Deque<Long>> from = new LinkedHashMap<>();
    private final Map<String, Long> tickets = new LinkedHashMap<>();

    /** What the holder of a token may do. */
    public enum Role {
        /** See everything. */
        LOOK,
        /** See everything, and act. */
        ACT
    }

    /**
     * Checks codes against {@code keys}.
     *
     * @param open whether join codes are accepted; if not, only the key for this machine is
     */
    public AccessControl(DeskCredentials keys, boolean open, SecureRandom random, LongSupplier nanoTime) {
        this.keys = keys;
        this.open = open;
        this.random = random;
        this.nanoTime = nanoTime;
    }

    /** Tells people without a token what to do. */
    public String asks() {
        return open
                ? "Join code, as the terminal and the reading window show it"
                : "Open the whole address that the terminal shows, or give what stands in it after #";
    }

    /** Whether this address has to wait before it may try a code. */
    public synchronized boolean mustWait(String address) {
        return recent(all) >= FROM_ALL || recent(tries(address)) >= FROM_ONE;
    }

    /**
     * A token for a right code; empty, and counted, for a wrong one. The key cannot be guessed, so whoever has it never waits
     * because others have tried wrong codes.
     */
    public synchronized Optional<String> join(String code, String address) {
        String typed = code.strip();
        if (same(typed, keys.key()) || admits(typed)) {
            return Optional.of(token(Role.ACT));
        }
        if (mustWait(address)) {
            return Optional.empty();
        }
        String plain = typed.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "");
        boolean act = open && same(plain, keys.act().replace("-", ""));
        boolean look = open && same(plain, keys.look().replace("-", ""));
        if (act || look) {
            return Optional.of(token(act ? Role.ACT : Role.LOOK));
        }
        long now = nanoTime.getAsLong();
        all.add(now);
        tries(address).add(now);
        return Optional.empty();
    }

    /**
     * A code that admits one page within {@link #TICKET_NANOS}. It may stand where other users of the machine can read it, as
     * in the arguments of a process.
     */
    public synchronized String ticket() {
        String ticket = nonce();
        tickets.put(ticket, nanoTime.getAsLong());
        return ticket;
    }

    /** A ticket for whoever has the key; empty for everyone else. */
    public Optional<String> ticket(String key) {
        return same(key, keys.key()) ? Optional.of(ticket()) : Optional.empty();
    }

    /** Shows whoever knows these credentials that the holder knows them, too, without giving them away. */
    public String proof(String challenge) {
        return proof(keys, challenge);
    }

    /** The proof that the holder of these credentials gives. */
    public static String proof(DeskCredentials keys, String challenge) {
        return signature(keys, "proof." + challenge);
    }

    private boolean admits(String typed) {
        long now = nanoTime.getAsLong();
        tickets.values().removeIf(issued -> now - issued > TICKET_NANOS);
        Optional<String> used =
                tickets.keySet().stream().filter(ticket -> same(ticket, typed)).findFirst();
        used.ifPresent(tickets::remove);
        return used.isPresent();
    }

    /** What the holder of a token may do; empty if this desk did not issue it. */
    public Optional<Role> role(String token) {
        int dot = token.lastIndexOf('.');
        if (dot < 0 || !same(token.substring(dot + 1), signature(token.substring(0, dot)))) {
            return Optional.empty();
        }
        // Other things are signed with the same secret.
        return Stream.of(Role.values())
                .filter(role -> token.startsWith(prefix(role)))
                .findFirst();
    }

    private String token(Role role) {
        String body = prefix(role) + nonce();
        return body + "." + signature(body);
    }

    private static String prefix(Role role) {
        return role.name().toLowerCase(Locale.ROOT) + ".";
    }

    private String nonce() {
        byte[] nonce = new byte[16];
        random.nextBytes(nonce);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(nonce);
    }

    private String signature(String body) {
        return signature(keys, body);
    }

    private static String signature(DeskCredentials keys, String body) {
        try {
            Mac mac = Mac.getInstance(ALGORITHM);
            mac.init(new SecretKeySpec(keys.secret().getBytes(StandardCharsets.UTF_8), ALGORITHM));
            return Base64.getUrlEncoder()
                    .withoutPadding()
                    .encodeToString(mac.doFinal(body.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform must know " + ALGORITHM, e);
        }
    }

    /** Compares in constant time. */
    private static boolean same(String a, String b) {
        return MessageDigest.isEqual(a.getBytes(StandardCharsets.UTF_8), b.getBytes(StandardCharsets.UTF_8));
    }

    private Deque<Long> tries(String address) {
        Deque<Long> tries = from.remove(address);
        if (from.size() >= ADDRESSES) {
            from.remove(from.keySet().iterator().next());
        }
        Deque<Long> kept = tries == null ? new ArrayDeque<>() : tries;
        from.put(address, kept);
        return kept;
    }

    private int recent(Deque<Long> tries) {
        long since = nanoTime.getAsLong() - WINDOW_NANOS;
        while (!tries.isEmpty() && tries.element() - since < 0) {
            tries.remove();
        }
        return tries.size();
    }
}
