package org.bookholder.film.sound;

import java.nio.FloatBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.film.plan.Heard;
import org.bookholder.footage.ffmpeg.FootageSound;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;

/**
 * The stretches of one file's sound that a film uses, decoded once, at 48,000 samples a second: of the channels
 * that were chosen, or those in which the voice is not lost. Confined to one thread.
 */
final class SoundPieces {
    private static final int RATE = StreamTime.TICKS_PER_SECOND;
    private static final float FULL_SCALE = 32_768;

    /** A file may end this many samples before its last stretch does: where it is cut the sound is faded anyway. */
    private static final long MISSING = RATE / 10;

    private final List<Piece> pieces;
    private final FloatBuffer samples;
    private Piece last;

    /** Samples of the source from {@code from} to before {@code to}. */
    record Range(long from, long to) {}

    private record Piece(long from, long to, long offset) {
        boolean holds(long sample) {
            return from <= sample && sample < to;
        }
    }

    private SoundPieces(List<Piece> pieces, FloatBuffer samples) {
        this.pieces = pieces;
        this.samples = samples;
        this.last = pieces.get(0);
    }

    /** Is told after each block how many samples of the source were decoded; may end the work by throwing. */
    @FunctionalInterface
    interface Listener {
        void decoded(long samples) throws ProblemException;
    }

    /**
     * Decodes a file as far as it is needed.
     *
     * @param source the file and its channels
     * @param wanted the stretches, at least one, in any order; they may overlap
     * @param store the file of the work in which they are kept
     * @throws ProblemException if the file cannot be read, or ends before them
     */
    static SoundPieces of(Heard.Source source, List<Range> wanted, Path store, Listener listener)
            throws ProblemException {
        List<Range> ranges = joined(wanted);
        List<Piece> pieces = new ArrayList<>();
        long at = 0;
        try (FootageSound sound = open(source);
                SampleFile.Writer out = new SampleFile.Writer(store)) {
            int next = 0;
            Optional<short[]> block = sound.read();
            while (block.isPresent() && next < ranges.size()) {
                short[] samples = block.get();
                long end = at + samples.length;
                while (next < ranges.size() && ranges.get(next).from() < end) {
                    Range range = ranges.get(next);
                    long from = Math.max(at, range.from());
                    if (from <= Math.max(range.from(), 0)) {
                        pieces.add(new Piece(Math.max(0, range.from()), range.to(), out.count()));
                    }
                    for (long i = from; i < Math.min(end, range.to()); i++) {
                        out.write(samples[(int) (i - at)] / FULL_SCALE);
                    }
                    if (range.to() > end) {
                        break;
                    }
                    next++;
                }
                at = end;
                listener.decoded(at);
                block = sound.read();
            }
            long needed = ranges.get(ranges.size() - 1).to();
            if (pieces.size() < ranges.size() || at < needed - MISSING) {
                throw new ProblemException(
                        String.format(
                                Locale.ROOT,
                                "its sound ends at %.1f s, but the film needs it up to %.1f s",
                                (double) at / RATE,
                                (double) needed / RATE),
                        source.file().toString(),
                        "copy the file from its card again, and match it again");
            }
        }
        return new SoundPieces(pieces, SampleFile.read(store));
    }

    private static FootageSound open(Heard.Source source) throws ProblemException {
        return source.channels().isPresent()
                ? FootageSound.open(source.file(), RATE, source.channels().get())
                : FootageSound.openVoice(source.file(), RATE);
    }

    private static List<Range> joined(List<Range> wanted) {
        List<Range> joined = new ArrayList<>();
        for (Range range :
                wanted.stream().sorted(Comparator.comparingLong(Range::from)).toList()) {
            Range before = joined.isEmpty() ? new Range(0, Long.MIN_VALUE) : joined.get(joined.size() - 1);
            if (range.from() <= before.to()) {
                joined.set(joined.size() - 1, new Range(before.from(), Math.max(before.to(), range.to())));
            } else {
                joined.add(range);
            }
        }
        return joined;
    }

    /** A sample of the source, by its number; zero where none was wanted, before the beginning and after the end. */
    float at(long sample) {
        if (!last.holds(sample)) {
            Optional<Piece> piece = pieces.stream().filter(p -> p.holds(sample)).findFirst();
            if (piece.isEmpty()) {
                return 0;
            }
            last = piece.get();
        }
        long index = last.offset() + sample - last.from();
        return index < samples.limit() ? samples.get((int) index) : 0;
    }
}
