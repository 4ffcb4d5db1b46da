package org.bookholder.desk;

import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.bookholder.desk.AccessControl.Role;

/**
 * The browsers that were let in. Each holds a token in a cookie, which is worth nothing once the program has ended, and a return
 * secret, which its open pages keep in memory and show only to a program that has proved who it is. Safe for use by several
 * threads.
 */
public final class Devices {
    /** How long a device may stay: a guest since it was let in, the owner's own since it was last seen. */
    static final Duration STAY = Duration.ofDays(1);

    /** More than anyone works with; the one that was not seen for longest makes room. */
    static final int MOST = 100;

    private static final Duration SAVED_EVERY = Duration.ofMinutes(10);

    private final InstantSource clock;
    private final SecureRandom random;
    private final DeviceFile file;
    private final Map<String, Device> known = new HashMap<>();
    private final Map<String, String> byToken = new HashMap<>();
    private final Map<String, String> returns = new HashMap<>();

    /** Those that have not shown their new token yet: as far as is known, they did not get the answer with which they were let in. */
    private final Set<String> unconfirmed = new HashSet<>();

    /**
     * A device that was let in.
     *
     * @param id its name in the list, no secret
     * @param place the part of the address below which its cookie is sent; known to its own browser only
     * @param role what it may do
     * @param owner whether it came with this machine's own key, not with a join code
     * @param mark by what its browser is told apart from others; no secret, and empty if it tells nothing
     * @param name what it calls itself, for people
     * @param since when it was let in
     * @param seen when it last asked for something
     * @param mayReturn digest of the secret with which it may come back after a restart; empty if it may not
     */
    public record Device(
            String id,
            String place,
            Role role,
            boolean owner,
            String mark,
            String name,
            Instant since,
            Instant seen,
            String mayReturn) {
        Device seenAt(Instant when) {
            return new Device(id, place, role, owner, mark, name, since, when, mayReturn);
        }

        Device returningWith(String digest) {
            return new Device(id, place, role, owner, mark, name, since, seen, digest);
        }

        boolean over(Instant now) {
            return Duration.between(owner ? seen : since, now).compareTo(STAY) >= 0;
        }
    }

    /**
     * What a device gets when it is let in.
     *
     * @param token for its cookie
     * @param place the part of the address below which the cookie is to be sent
     */
    public record Entry(String token, String place) {}

    /** Nobody is in yet but those who may return by what was kept in {@code file}. */
    public Devices(InstantSource clock, SecureRandom random, DeviceFile file) {
        this.clock = clock;
        this.random = random;
        this.file = file;
        file.read().forEach(device -> known.put(device.id(), device));
        dropThoseOver();
    }

    /** Lets a device in; the owner's browser is one device, however often its page is opened. */
    synchronized Entry letIn(Role role, boolean owner, String mark, String name) {
        Instant now = clock.instant();
        dropThoseOver();
        Optional<Device> own = known.values().stream()
                .filter(device -> owner && device.owner() && !mark.isEmpty() && mark.equals(device.mark()))
                .findFirst();
        if (own.isPresent()) {
            byToken.values().removeIf(own.get().id()::equals);
            return entry(own.get());
        }
        if (known.size() >= MOST) {
            known.values().stream().min(Comparator.comparing(Device::seen)).ifPresent(longest -> drop(longest.id()));
        }
        Device device = new Device(
                Secrets.random(random, 9), Secrets.random(random, 16), role, owner, mark, name, now, now, "");
        known.put(device.id(), device);
        return entry(device);
    }

    /**
     * Lets a device in again that was in before the program ended; empty if it may not return. The secret is good until the device has
     * shown the token that it was given for it, since the answer may be lost on its way.
     */
    synchronized Optional<Entry> letReturn(String secret) {
        dropThoseOver();
        String digest = Secrets.digest(secret);
        Optional<Device> found = known.values().stream()
                .filter(device -> !device.mayReturn().isEmpty() && Secrets.same(device.mayReturn(), digest))
                .findFirst();
        return found.map(this::entry);
    }

    private Entry entry(Device device) {
        String token = Secrets.random(random, 24);
        byToken.put(Secrets.digest(token), device.id());
        returns.computeIfAbsent(device.id(), id -> Secrets.random(random, 24));
        unconfirmed.add(device.id());
        known.put(device.id(), device.seenAt(clock.instant()));
        return new Entry(token, device.place());
    }

    /** The holder of a token, who is seen by this; empty if it is not in, or not any more. */
    public synchronized Optional<Device> holder(String token) {
        String id = byToken.get(Secrets.digest(token));
        Device device = id == null ? null : known.get(id);
        Instant now = clock.instant();
        if (device == null) {
            return Optional.empty();
        }
        if (device.over(now)) {
            drop(device.id());
            save();
            return Optional.empty();
        }
        boolean arrived = unconfirmed.remove(device.id());
        Device in = arrived ? device.returningWith(Secrets.digest(comesBackWith(device))) : device;
        known.put(in.id(), in.seenAt(now));
        if (arrived || Duration.between(device.seen(), now).compareTo(SAVED_EVERY) > 0) {
            save();
        }
        return Optional.of(in);
    }

    /** Whether a device is still in. */
    public synchronized boolean in(String id) {
        Device device = known.get(id);
        return device != null && !device.over(clock.instant());
    }

    /** With which secret a device that is in may come back after a restart. */
    public synchronized String comesBackWith(Device device) {
        return returns.getOrDefault(device.id(), "");
    }

    /** All that are in, the one that was seen last first. */
    public synchronized List<Device> all() {
        dropThoseOver();
        List<Device> all = new ArrayList<>(known.values());
        all.sort(Comparator.comparing(Device::seen).reversed().thenComparing(Device::id));
        return all;
    }

    /** Lets a device out; whether it was in. */
    synchronized boolean letOut(String id) {
        boolean was = drop(id);
        save();
        return was;
    }

    private boolean drop(String id) {
        byToken.values().removeIf(id::equals);
        returns.remove(id);
        unconfirmed.remove(id);
        return known.remove(id) != null;
    }

    private void dropThoseOver() {
        Instant now = clock.instant();
        known.values().stream()
                .filter(device -> device.over(now))
                .map(Device::id)
                .toList()
                .forEach(this::drop);
    }

    private void save() {
        file.write(List.copyOf(known.values()));
    }
}
