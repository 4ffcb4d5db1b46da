package org.bookholder.handoff.sound;

import java.util.Optional;
import java.util.function.IntUnaryOperator;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.footage.Channels;
import org.bookholder.footage.ffmpeg.FootageSound;
import org.bookholder.handoff.timeline.Media;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/** Samples of a source by their numbers, which are asked for in ascending order but for small steps back. */
interface Samples extends AutoCloseable {
    /** The sample with a number; silence where there is none. */
    short at(int take, long number) throws ProblemException;

    /** How many samples a second those of this take are. */
    int rate(int take);

    @Override
    void close();

    /** A file of footage at {@code rate} samples a second, counted from its beginning. */
    static Samples ofFile(Media media, Channels heard, int rate) throws ProblemException {
        return new FileSamples(FootageSound.open(media.file(), rate, heard), rate);
    }

    /** The session's own recordings, each at its own rate, which {@code rates} tells, counted from the session's beginning. */
    static Samples ofTakes(TakeSound sound, IntUnaryOperator rates) {
        return new TakeSamples(sound, rates);
    }

    /** Keeps the last seconds of a file that is read from beginning to end. */
    final class FileSamples implements Samples {
        private static final int KEPT = 1 << 18;

        private final FootageSound sound;
        private final int rate;
        private final short[] kept = new short[KEPT];
        private long read;
        private boolean ended;

        FileSamples(FootageSound sound, int rate) {
            this.sound = sound;
            this.rate = rate;
        }

        @Override
        public int rate(int take) {
            return rate;
        }

        @Override
        public short at(int take, long number) throws ProblemException {
            while (!ended && read <= number) {
                Optional<short[]> next = sound.read();
                ended = next.isEmpty();
                for (short sample : next.orElse(new short[0])) {
                    kept[(int) (read++ % KEPT)] = sample;
                }
            }
            return number < 0 || number >= read || number < read - KEPT ? 0 : kept[(int) (number % KEPT)];
        }

        @Override
        public void close() {
            sound.close();
        }
    }

    /** Reads the takes in pieces of some seconds. */
    final class TakeSamples implements Samples {
        private static final int SECONDS = 10;

        private final TakeSound sound;
        private final IntUnaryOperator rates;
        private short[] piece = {};
        private int take;
        private long from = -1;

        TakeSamples(TakeSound sound, IntUnaryOperator rates) {
            this.sound = sound;
            this.rates = rates;
        }

        @Override
        public int rate(int wanted) {
            return rates.applyAsInt(wanted);
        }

        @Override
        public short at(int wanted, long number) throws ProblemException {
            if (number < 0) {
                return 0;
            }
            if (from < 0 || wanted != take || number < from || number >= from + piece.length) {
                // A second before it is kept for the small steps back.
                read(wanted, Math.max(0, number - rate(wanted)));
            }
            return piece[(int) (number - from)];
        }

        private void read(int wanted, long first) throws ProblemException {
            take = wanted;
            from = first;
            int rate = rate(wanted);
            piece = new short[SECONDS * rate];
            StreamTime start = StreamTime.ofSamples(first, rate);
            Optional<AudioBlock> block = sound.read(wanted, start, StreamTime.ofSamples(first + piece.length, rate));
            if (block.isPresent()) {
                int at = (int) (block.get().start().samples(rate) - first);
                short[] samples = block.get().samples();
                int skipped = Math.max(0, -at);
                int count = Math.min(samples.length - skipped, piece.length - Math.max(0, at));
                if (count > 0) {
                    System.arraycopy(samples, skipped, piece, Math.max(0, at), count);
                }
            }
        }

        @Override
        public void close() {
            // It is read piece by piece; nothing stays open.
        }
    }
}
