package org.bookholder.cutlist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/**
 * The sound of the cut lesson: clips joined by short cross-fades, with room tone in the gaps.
 *
 * <p>It is read piece by piece, so that a long lesson needs no more memory than its longest clip. Confined to one
 * thread.
 */
public final class ListeningCut {
    private static final StreamTime FADE = StreamTime.ofSeconds(0.01);
    private static final StreamTime TONE = StreamTime.ofSeconds(0.5);

    private final CutList cut;
    private final TakeSound sound;
    private final int rate;
    private final short[] tone;

    private ListeningCut(CutList cut, TakeSound sound, int rate, short[] tone) {
        this.cut = cut;
        this.sound = sound;
        this.rate = rate;
        this.tone = tone;
    }

    /**
     * Prepares the cut; empty if none of its clips was recorded.
     *
     * @throws ProblemException if a recording cannot be read
     */
    public static Optional<ListeningCut> of(CutList cut, TakeSound sound) throws ProblemException {
        for (Clip clip : cut.clips()) {
            Optional<AudioBlock> block = sound.read(clip.take(), clip.in(), clip.out());
            if (block.isPresent()) {
                return Optional.of(new ListeningCut(cut, sound, block.get().rate(), tone(cut, sound)));
            }
        }
        return Optional.empty();
    }

    /** Sample rate in Hz. */
    public int rate() {
        return rate;
    }

    /** Number of samples. */
    public long samples() {
        return cut.items().stream().mapToLong(this::samples).sum();
    }

    /** Number of pieces. */
    public int pieces() {
        return cut.items().size();
    }

    /**
     * The samples of a piece.
     *
     * @param piece its index, from 0
     * @throws ProblemException if a recording cannot be read
     */
    public short[] piece(int piece) throws ProblemException {
        CutItem item = cut.items().get(piece);
        short[] samples = item.clip().isPresent() ? clip(item.clip().get()) : tone((int) samples(item));
        // Cross-fade: the sound that followed the end of the previous piece fades out under the beginning of this one.
        int fade = (int) Math.min(FADE.samples(rate), samples.length);
        short[] before = piece == 0 ? new short[fade] : beyond(cut.items().get(piece - 1), fade);
        for (int i = 0; i < fade; i++) {
            double in = (i + 0.5) / fade;
            samples[i] = (short) Math.round(in * samples[i] + (1 - in) * before[i]);
        }
        return samples;
    }

    private long samples(CutItem item) {
        return item.length().samples(rate);
    }

    private short[] clip(Clip clip) throws ProblemException {
        List<short[]> parts = new ArrayList<>();
        StreamTime step = StreamTime.ofSeconds(60);
        for (StreamTime at = clip.in(); at.isBefore(clip.out()); at = at.plus(step)) {
            Optional<AudioBlock> block = sound.read(clip.take(), at, StreamTime.min(at.plus(step), clip.out()));
            block.ifPresent(b -> parts.add(atRate(b)));
        }
        short[] samples = new short[(int) samples(clip)];
        int filled = 0;
        for (short[] part : parts) {
            int length = Math.min(part.length, samples.length - filled);
            System.arraycopy(part, 0, samples, filled, length);
            filled += length;
        }
        return samples;
    }

    /** The sound that directly follows an item. */
    private short[] beyond(CutItem item, int length) throws ProblemException {
        short[] samples = new short[length];
        if (item.clip().isEmpty()) {
            return tone(length);
        }
        Clip clip = item.clip().get();
        StreamTime to = clip.out().plus(StreamTime.ofSamples(length, rate));
        sound.read(clip.take(), clip.out(), to).ifPresent(b -> copy(atRate(b), samples));
        return samples;
    }

    private static void copy(short[] from, short[] to) {
        System.arraycopy(from, 0, to, 0, Math.min(from.length, to.length));
    }

    /** Takes of one session mostly have the same rate; for listening, linear interpolation is good enough. */
    private short[] atRate(AudioBlock block) {
        if (block.rate() == rate) {
            return block.samples();
        }
        short[] samples = new short[(int) ((long) block.samples().length * rate / block.rate())];
        for (int i = 0; i < samples.length; i++) {
            double at = (double) i * block.rate() / rate;
            int before = (int) at;
            int after = Math.min(before + 1, block.samples().length - 1);
            double share = at - before;
            samples[i] = (short) Math.round((1 - share) * block.samples()[before] + share * block.samples()[after]);
        }
        return samples;
    }

    /** Room tone of any length: one piece played forwards and backwards in turn, so that there are no audible joins. */
    private short[] tone(int length) {
        short[] samples = new short[length];
        if (tone.length > 1) {
            int period = 2 * (tone.length - 1);
            for (int i = 0; i < length; i++) {
                int at = i % period;
                samples[i] = tone[at < tone.length ? at : period - at];
            }
        }
        return samples;
    }

    /** The longest silence next to a clip, up to half a second; empty if there is none. */
    private static short[] tone(CutList cut, TakeSound sound) throws ProblemException {
        Optional<AudioBlock> best = Optional.empty();
        for (Clip clip : cut.clips()) {
            StreamTime to = StreamTime.min(clip.quietTo(), clip.out().plus(TONE));
            if (to.since(clip.out()).compareTo(FADE) > 0) {
                Optional<AudioBlock> quiet = sound.read(clip.take(), clip.out(), to);
                boolean longer = quiet.isPresent()
                        && quiet.get().samples().length
                                > best.map(b -> b.samples().length).orElse(0);
                best = longer ? quiet : best;
            }
        }
        return best.map(AudioBlock::samples).orElse(new short[0]);
    }
}
