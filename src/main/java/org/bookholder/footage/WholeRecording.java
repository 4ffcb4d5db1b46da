package org.bookholder.footage;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.bookholder.timing.StreamTime;

/**
 * One recording of a camera or recorder, which may have stored it in several files.
 *
 * @param parts its files, at least one; each goes on where the one before ends
 */
public record WholeRecording(List<Footage> parts) {
    /** Copies the list. */
    public WholeRecording {
        parts = List.copyOf(parts);
        if (parts.isEmpty()) {
            throw new IllegalArgumentException("parts must not be empty");
        }
    }

    /** A recording in one file. */
    public static WholeRecording of(Footage file) {
        return new WholeRecording(List.of(file));
    }

    /** Whether it lies in more than one file. */
    public boolean split() {
        return parts.size() > 1;
    }

    /** What people call it: its file's name, or those of the first and the last. */
    public String name() {
        Footage first = parts.get(0);
        Footage last = parts.get(parts.size() - 1);
        return split() ? first.name() + (parts.size() == 2 ? " and " : " to ") + last.name() : first.name();
    }

    /** Where a file of it begins in it; for the number of files, where it ends. */
    public StreamTime begins(int part) {
        long ticks = 0;
        for (Footage before : parts.subList(0, part)) {
            ticks += before.length().ticks();
        }
        return new StreamTime(ticks);
    }

    /** How long it lasts. */
    public StreamTime length() {
        return begins(parts.size());
    }

    /** When it was begun, if the camera wrote that. */
    public Optional<Instant> recorded() {
        return parts.get(0).recorded();
    }
}
