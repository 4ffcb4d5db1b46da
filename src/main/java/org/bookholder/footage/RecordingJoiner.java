package org.bookholder.footage;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.bookholder.timing.Timecode;

/**
 * Finds files that are one recording: cameras and recorders begin a new file at a certain size or length, also in the middle of a
 * word.
 *
 * <p>Such files lie in one folder, are of one kind, are numbered one after the other, and go on in time and in sound. Where
 * nothing tells the time of day they are joined only if somebody says so: a timecode that runs only while the camera records goes
 * on over every stop. Confined to one thread.
 */
public final class RecordingJoiner {
    /** Cameras write the time of day in whole seconds, some of them when the file is begun, some when it is ready. */
    private static final Duration SECONDS = Duration.ofSeconds(2);

    /** A recorder counts its samples since midnight; a stop and a start by hand take longer than this. */
    private static final StreamTime SAMPLES = StreamTime.ofSeconds(0.05);

    private static final StreamTime DAY = StreamTime.ofSeconds(24 * 3600);

    private final Border border;
    private final boolean byNumbers;

    /** Two files that may be parts of one recording and are not joined: they are numbered one after the other and of one kind. */
    public record Apart(Footage first, Footage then, Reason reason) {}

    /** Why files were not joined. */
    public enum Reason {
        /** They do not both tell the time of day. */
        NO_TIME,
        /** They go on in time, but not in sound. */
        SOUND
    }

    /** Compares the sound on both sides of a border between two files. */
    @FunctionalInterface
    public interface Border {
        /**
         * Whether the beginning of {@code then} may go on from the end of {@code first}.
         *
         * @throws ProblemException if one of them cannot be read
         */
        boolean goesOn(Footage first, Footage then) throws ProblemException;
    }

    /**
     * Creates one.
     *
     * @param border is asked where all else fits
     * @param byNumbers whether files that tell no time of day are joined by their numbers, as somebody says that they belong together
     */
    public RecordingJoiner(Border border, boolean byNumbers) {
        this.border = border;
        this.byNumbers = byNumbers;
    }

    /**
     * The recordings that files belong to. A recording comes where the first of its files that was named stood; its files are in
     * order of time, however they were named.
     *
     * @throws ProblemException if the sound of a file cannot be read
     */
    public List<WholeRecording> join(List<Footage> files) throws ProblemException {
        List<List<Footage>> chains = new ArrayList<>();
        files.forEach(file -> chains.add(new ArrayList<>(List.of(file))));
        for (int i = 0; i < chains.size(); ) {
            int next = next(chains, i);
            if (next < 0) {
                i++;
                continue;
            }
            List<Footage> joined = new ArrayList<>(chains.get(i));
            joined.addAll(chains.get(next));
            chains.set(Math.min(i, next), joined);
            chains.remove(Math.max(i, next));
            i = Math.min(i, next);
        }
        return chains.stream().map(WholeRecording::new).toList();
    }

    /**
     * What of these may belong together all the same: neighbours that a person should know of.
     *
     * @param recordings what {@link #join} gave
     * @throws ProblemException if the sound of a file cannot be read
     */
    public List<Apart> apart(List<WholeRecording> recordings) throws ProblemException {
        List<Apart> apart = new ArrayList<>();
        for (int before = 0; before < recordings.size(); before++) {
            List<Footage> parts = recordings.get(before).parts();
            Footage last = parts.get(parts.size() - 1);
            for (int after = 0; after < recordings.size(); after++) {
                Footage then = recordings.get(after).parts().get(0);
                if (before != after && alike(last, then) && inTime(last, then)) {
                    if (!byNumbers && !timed(last, then)) {
                        apart.add(new Apart(last, then, Reason.NO_TIME));
                    } else if (!border.goesOn(last, then)) {
                        apart.add(new Apart(last, then, Reason.SOUND));
                    }
                }
            }
        }
        return apart;
    }

    /** The place of what goes on from the end of a chain of files; -1 if nothing does. */
    private int next(List<List<Footage>> chains, int chain) throws ProblemException {
        Footage last = chains.get(chain).get(chains.get(chain).size() - 1);
        for (int i = 0; i < chains.size(); i++) {
            Footage then = chains.get(i).get(0);
            if (i != chain && alike(last, then) && fits(last, then) && border.goesOn(last, then)) {
                return i;
            }
        }
        return -1;
    }

    private static boolean alike(Footage first, Footage then) {
        return Objects.equals(folder(first), folder(then))
                && first.sound().isPresent()
                && first.sound().equals(then.sound())
                && first.picture().isPresent() == then.picture().isPresent()
                && first.picture()
                        .flatMap(p -> then.picture().map(q -> alike(p, q)))
                        .orElse(true)
                && FileNumber.follows(first.name(), then.name());
    }

    /** At a rate that varies, no two files have the same mean. */
    private static boolean alike(Footage.Picture first, Footage.Picture then) {
        return first.width() == then.width()
                && first.height() == then.height()
                && first.variable() == then.variable()
                && (first.variable() || first.rate().equals(then.rate()));
    }

    private static Optional<Path> folder(Footage file) {
        return Optional.ofNullable(file.file().getParent()).map(Path::normalize);
    }

    private boolean fits(Footage first, Footage then) {
        return inTime(first, then) && (byNumbers || timed(first, then));
    }

    /** Whether one begins when the other ends, by all that both tell of it. */
    private static boolean inTime(Footage first, Footage then) {
        return clocks(first, then).allMatch(fits -> fits)
                && byTimecode(first, then).orElse(true);
    }

    /** Whether both tell the time of day. */
    private static boolean timed(Footage first, Footage then) {
        return clocks(first, then).findAny().isPresent();
    }

    /** What each clock says that both have. */
    private static Stream<Boolean> clocks(Footage first, Footage then) {
        return Stream.of(byTimeOfDay(first, then), bySamples(first, then)).flatMap(Optional::stream);
    }

    private static Optional<Boolean> byTimeOfDay(Footage first, Footage then) {
        return first.recorded()
                .flatMap(began -> then.recorded().map(next -> {
                    Duration off = Duration.between(began.plus(first.length().toDuration()), next)
                            .abs();
                    return off.compareTo(SECONDS) <= 0;
                }));
    }

    private static Optional<Boolean> bySamples(Footage first, Footage then) {
        return first.sinceMidnight()
                .flatMap(began -> then.sinceMidnight().map(next -> {
                    long off = Math.floorMod(
                            next.ticks() - began.ticks() - first.length().ticks(), DAY.ticks());
                    return Math.min(off, DAY.ticks() - off) <= SAMPLES.ticks();
                }));
    }

    /** Whether the label of the next file's first picture is the one after the last. */
    private static Optional<Boolean> byTimecode(Footage first, Footage then) {
        Optional<Footage.Picture> steady = first.picture().filter(p -> !p.variable());
        if (steady.isEmpty() || first.timecode().isEmpty() || then.timecode().isEmpty()) {
            return Optional.empty();
        }
        FrameRate rate = steady.get().rate();
        boolean drop = rate.canDrop() && Timecode.looksDropped(first.timecode().get());
        Timecode labels = new Timecode(rate, drop);
        long frames = rate.nearestFrame(first.length().ticks());
        return labels.frame(first.timecode().get())
                .flatMap(from -> labels.frame(then.timecode().get())
                        .map(next -> (from + frames) % labels.framesPerDay() == next));
    }
}
