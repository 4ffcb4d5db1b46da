package org.bookholder.desk;

import java.security.SecureRandom;
import java.time.InstantSource;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.bookholder.desk.Devices.Device;
import org.bookholder.desk.Devices.Entry;

/**
 * Checks keys, tickets and join codes, and lets devices in. Wrong codes are counted, for each address and in total, so that nobody
 * can guess a code. Safe for use by several threads.
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
    private static final int TICKET_BYTES = 16;

    private final DeskCredentials keys;
    private final boolean open;
    private final SecureRandom random;
    private final Devices devices;
    private final JoinCodes codes;
    private final LongSupplier nanoTime;
    private final Deque<Long> all = new ArrayDeque<>();
    private final Map<String, Deque<Long>> from = new LinkedHashMap<>();
    private final Map<String, Long> tickets = new LinkedHashMap<>();

    /** What a device may do. */
    public enum Role {
        /** See everything. */
        LOOK,
        /** See everything, and act. */
        ACT
    }

    /** Why a code lets nobody in. */
    public enum Refusal {
        /** It is not right. */
        WRONG("this code is not right"),
        /** Too many were wrong. */
        WAIT("too many wrong codes; wait a while"),
        /** It has let this device in before. */
        USED("this code has let this device in before; ask for a new one");

        private final String text;

        Refusal(String text) {
            this.text = text;
        }

        /** For people. */
        public String text() {
            return text;
        }
    }

    /**
     * Who asks to be let in.
     *
     * @param address its address in the network
     * @param mark what its browser is told apart by; empty if it tells nothing
     * @param name what it is, for people
     */
    public record Caller(String address, String mark, String name) {}

    /**
     * The answer to a code.
     *
     * @param entry for whoever is let in
     * @param refusal why not, if it is empty
     */
    public record Answer(Optional<Entry> entry, Refusal refusal) {
        private static Answer no(Refusal why) {
            return new Answer(Optional.empty(), why);
        }

        private static Answer yes(Entry entry) {
            return new Answer(Optional.of(entry), Refusal.WRONG);
        }
    }

    /**
     * Checks codes against {@code keys}.
     *
     * @param open whether join codes are accepted; if not, only the key for this machine is
     * @param clock time of day, by which codes and devices end after a day
     * @param file where it is kept who may come back after a restart
     */
    public AccessControl(
            DeskCredentials keys,
            boolean open,
            SecureRandom random,
            LongSupplier nanoTime,
            InstantSource clock,
            DeviceFile file) {
        this.keys = keys;
        this.open = open;
        this.random = random;
        this.nanoTime = nanoTime;
        devices = new Devices(clock, random, file);
        codes = new JoinCodes(clock, random);
    }

    /** The devices that are in. */
    public Devices devices() {
        return devices;
    }

    /** The join code for those who may act, as of now; empty if none is accepted. */
    public Optional<String> actCode() {
        return open ? Optional.of(codes.now().act()) : Optional.empty();
    }

    /** The join code for those who may only look, as of now; empty if none is accepted. */
    public Optional<String> lookCode() {
        return open ? Optional.of(codes.now().look()) : Optional.empty();
    }

    /** Lets a device out and makes new codes, so that it can't come in again by one that it knows; whether it was in. */
    public boolean letOut(String id) {
        boolean was = devices.letOut(id);
        codes.renew();
        return was;
    }

    /** Tells people without a token what to do. */
    public String asks() {
        return open
                ? "Join code, as the terminal and the reading window show it; it is new each day"
                : "Open the whole address that the terminal shows, or give what stands in it after #";
    }

    /** Whether this address has to wait before it may try a code. */
    public synchronized boolean mustWait(String address) {
        return recent(all) >= FROM_ALL || recent(tries(address)) >= FROM_ONE;
    }

    /**
     * Lets whoever has a right code in, and counts a wrong one. The key cannot be guessed, nor can the secret of a device that comes
     * back, so whoever has one never waits because others have tried wrong codes.
     */
    public synchronized Answer join(String code, Caller caller) {
        String typed = code.strip();
        if (Secrets.same(typed, keys.key()) || admits(typed)) {
            return Answer.yes(devices.letIn(Role.ACT, true, caller.mark(), caller.name()));
        }
        Optional<Entry> back = devices.letReturn(typed);
        if (back.isPresent()) {
            return Answer.yes(back.get());
        }
        if (mustWait(caller.address())) {
            return Answer.no(Refusal.WAIT);
        }
        String plain = typed.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "");
        JoinCodes.Codes now = codes.now();
        boolean act = open && Secrets.same(plain, now.act().replace("-", ""));
        boolean look = open && Secrets.same(plain, now.look().replace("-", ""));
        if (act || look) {
            if (!caller.mark().isEmpty() && !codes.use(plain, caller.mark())) {
                return Answer.no(Refusal.USED);
            }
            return Answer.yes(devices.letIn(act ? Role.ACT : Role.LOOK, false, caller.mark(), caller.name()));
        }
        long tried = nanoTime.getAsLong();
        all.add(tried);
        tries(caller.address()).add(tried);
        return Answer.no(Refusal.WRONG);
    }

    /**
     * A code that admits one page within {@link #TICKET_NANOS}. It may stand where other users of the machine can read it, as
     * in the arguments of a process.
     */
    public synchronized String ticket() {
        String ticket = Secrets.random(random, TICKET_BYTES);
        tickets.put(ticket, nanoTime.getAsLong());
        return ticket;
    }

    /** A ticket for whoever has the key; empty for everyone else. */
    public Optional<String> ticket(String key) {
        return Secrets.same(key, keys.key()) ? Optional.of(ticket()) : Optional.empty();
    }

    /** Shows whoever knows these credentials that the holder knows them, too, without giving them away. */
    public String proof(String challenge) {
        return proof(keys, challenge);
    }

    /** The proof that the holder of these credentials gives. */
    public static String proof(DeskCredentials keys, String challenge) {
        return Secrets.signature(keys.secret(), "proof." + challenge);
    }

    private boolean admits(String typed) {
        long now = nanoTime.getAsLong();
        tickets.values().removeIf(issued -> now - issued > TICKET_NANOS);
        Optional<String> used = tickets.keySet().stream()
                .filter(ticket -> Secrets.same(ticket, typed))
                .findFirst();
        used.ifPresent(tickets::remove);
        return used.isPresent();
    }

    /**
     * With what the program proves itself to a device after a restart: its pages compute the same from what {@link #prover} gave them.
     *
     * @param id the device's
     * @param challenge chosen by the page
     * @param host the address under which the page has asked, so that nobody can pass the question on
     */
    public String proofTo(String id, String challenge, String host) {
        return Secrets.signature(prover(id), challenge + "." + host);
    }

    /** The secret that a device shares with the program, for {@link #proofTo}. */
    public String prover(Device device) {
        return prover(device.id());
    }

    private String prover(String id) {
        return Secrets.signature(keys.secret(), "prover." + id);
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
