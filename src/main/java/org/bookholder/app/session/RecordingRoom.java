package org.bookholder.app.session;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.files.DiskRoom;
import org.jspecify.annotations.Nullable;

/**
 * How long a take a disk has room for.
 *
 * @param seconds of recording, 0 or more
 */
public record RecordingRoom(double seconds) {
    /** A recording on a disk with less than this is warned of. */
    private static final double LITTLE = 20 * 60;

    private static final double MUCH = 10 * 3600;

    /** What the journal takes: the demo's reading took 850 bytes a second, one with more attempts takes more. */
    private static final double NOTES_PER_SECOND = 2_000;

    /** Kept for the journal's log, the script's copy and what other programs write meanwhile. Bytes. */
    private static final long RESERVE = 16L << 20;

    /** The room that so many free bytes are, at {@code rate} samples of 16 bit a second. */
    static RecordingRoom of(long bytes, int rate) {
        return new RecordingRoom(Math.max(0, bytes - RESERVE) / (2.0 * rate + NOTES_PER_SECOND));
    }

    /** The room in a folder, which need not exist yet; empty if the system does not tell. */
    public static Optional<RecordingRoom> in(Path folder, int rate) {
        @Nullable Path there = folder.toAbsolutePath();
        while (there != null && !Files.exists(there)) {
            there = there.getParent();
        }
        return there == null ? Optional.empty() : Optional.of(of(DiskRoom.free(there), rate));
    }

    /** One sentence for people. */
    public String sentence() {
        return "The disk has room for " + length() + " of recording.";
    }

    /**
     * What to warn of, for people; empty if there is room enough.
     *
     * @param needed how long the lesson is, in seconds
     */
    public Optional<String> warning(double needed) {
        if (seconds < needed) {
            return Optional.of("the disk has room for " + length() + " of recording, and this lesson takes about "
                    + Math.round(Math.ceil(needed / 60)) + "; free some space before you begin");
        }
        return scarce()
                ? Optional.of(
                        "the disk has room for only " + length() + " of recording; free some space before you begin")
                : Optional.empty();
    }

    /** Whether there is so little that it should be said whatever is read. */
    public boolean scarce() {
        return seconds < LITTLE;
    }

    /** Rounded down. */
    private String length() {
        if (seconds >= MUCH) {
            return "more than 10 hours";
        }
        long minutes = (long) (seconds / 60);
        if (minutes < 1) {
            return "less than a minute";
        }
        long steps = minutes < 20 ? minutes : minutes / 5 * 5;
        return steps < 180
                ? "about " + steps + (steps == 1 ? " minute" : " minutes")
                : String.format(Locale.ROOT, "about %.0f hours", Math.floor(steps / 60.0));
    }
}
