package org.bookholder.footage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.sound.Decibels;

/**
 * Which of a file's channels a voice is heard from best: all of them mixed, unless it is much softer in the mix, as when one side is
 * inverted, or another channel drowns it; then the channel, or the two together, in which it is clearest.
 */
public final class ChannelChooser {
    /** Softer sound is no voice, in dBFS. */
    private static final double SOFTEST = -70;

    /**
     * The mix of several channels is softer than one of them alone, by 20 times the logarithm of their number; where it is softer by this
     * much more, the voice is cancelled, in dB.
     */
    private static final double CANCELLED = 10;

    /** A channel rises further out of its noise than the mix by more than this, in dB, where it is guessed what is voice. */
    private static final double CLEARER = 6;

    /** The same where it is known. */
    private static final double CLEARER_KNOWN = 3;

    /** A mix in which the voice rises further than this out of its noise is good enough, in dB. */
    private static final double GOOD_ENOUGH = 25;

    /** Two channels together are worth it where they are clearer than one by more than this; noise that differs gives 3 dB. */
    private static final double TOGETHER = 2;

    /** The share of a take's frames in which its voice is surely heard. */
    private static final double LOUD = 0.25;

    /** The share in which only its room is: in the demo's reading, which is fluent, 8 of 100 frames are pauses with their neighbours. */
    private static final double QUIET = 0.05;

    private static final int LEAST_QUIET = 3;

    /** How many pairs are worth a search of their own. */
    private static final int PAIRS = 6;

    /**
     * How a voice stands in some channels.
     *
     * @param loud how loud it is, in dBFS
     * @param clear how far it rises out of what is heard between the words, in dB
     */
    private record Voice(double loud, double clear) {}

    private record Candidate(Channels channels, Voice voice) {
        double clear() {
            return voice.clear();
        }
    }

    private ChannelChooser() {}

    /** Without knowing what is said: a voice is what rises and falls, its loud tenth against the soft one. */
    public static Channels best(ChannelPowers powers) {
        return best(alone(powers), CLEARER).channels();
    }

    /** The same, and how a take is heard there of which this is the whole sound. */
    public static Hearing best(ChannelPowers powers, int take) {
        List<Candidate> all = alone(powers);
        Candidate best = best(all, CLEARER);
        List<Double> levels = IntStream.rangeClosed(1, powers.channels())
                .mapToObj(channel -> alone(powers, Channels.one(channel)).loud())
                .toList();
        return new Hearing(take, best.channels(), best.clear(), levels);
    }

    /**
     * The channels in which a take is clearest: louder where it has its voice, and quiet where it pauses.
     *
     * @param take the take's own sound
     * @param placement where it lies in the file
     */
    public static Hearing best(ChannelPowers powers, ChannelPowers take, Placement placement) {
        Frames frames = Frames.of(take, placement, powers.frames());
        List<Candidate> all = Channels.of(powers.channels()).stream()
                .map(heard -> new Candidate(
                        heard, voice(mean(powers, heard, frames.loud()), mean(powers, heard, frames.quiet()))))
                .toList();
        Candidate best = best(all, CLEARER_KNOWN);
        List<Double> levels = IntStream.rangeClosed(1, powers.channels())
                .mapToObj(channel -> Decibels.ofPower(mean(powers, Channels.one(channel), frames.loud())))
                .toList();
        return new Hearing(placement.take(), best.channels(), best.clear(), levels);
    }

    /**
     * What is worth a search of its own where a voice is lost in the mix, the likeliest first: each channel, then those pairs that are
     * clearer than both of their channels.
     */
    public static List<Channels> worthASearch(ChannelPowers powers) {
        List<Candidate> all = alone(powers);
        Comparator<Candidate> clearest =
                Comparator.comparingDouble(Candidate::clear).reversed();
        List<Candidate> worth = new ArrayList<>();
        all.stream()
                .filter(c -> c.channels().first() > 0 && !c.channels().pair())
                .sorted(clearest)
                .forEach(worth::add);
        all.stream()
                .filter(c -> c.channels().pair()
                        && c.clear() > of(all, c.channels().first()).clear() + TOGETHER
                        && c.clear() > of(all, c.channels().second()).clear() + TOGETHER)
                .sorted(clearest)
                .limit(PAIRS)
                .forEach(worth::add);
        return worth.stream().map(Candidate::channels).toList();
    }

    private static Candidate of(List<Candidate> all, int channel) {
        return all.stream()
                .filter(c -> c.channels().equals(Channels.one(channel)))
                .findFirst()
                .orElseThrow();
    }

    private static List<Candidate> alone(ChannelPowers powers) {
        return Channels.of(powers.channels()).stream()
                .map(heard -> new Candidate(heard, alone(powers, heard)))
                .toList();
    }

    private static Voice alone(ChannelPowers powers, Channels heard) {
        double[] levels = IntStream.range(0, powers.frames())
                .mapToDouble(frame -> powers.power(heard, frame))
                .sorted()
                .toArray();
        return levels.length == 0 ? voice(0, 0) : voice(levels[levels.length * 9 / 10], levels[levels.length / 10]);
    }

    /** Digital silence says nothing of the noise under a voice. */
    private static Voice voice(double loud, double quiet) {
        double level = Decibels.ofPower(loud);
        return new Voice(level, Math.max(0, level - Math.max(SOFTEST - CANCELLED, Decibels.ofPower(quiet))));
    }

    private static Candidate best(List<Candidate> all, double clearer) {
        Candidate mix = all.get(0);
        double share = 20
                * Math.log10(Math.max(
                        1,
                        all.stream().mapToInt(c -> c.channels().first()).max().orElse(1)));
        Optional<Candidate> best = all.stream()
                .filter(c -> c.channels().first() > 0 && !c.channels().pair())
                .filter(c -> c.voice().loud() > SOFTEST)
                .max(Comparator.comparingDouble(Candidate::clear));
        Optional<Candidate> together = all.stream()
                .filter(c -> c.channels().pair() && c.voice().loud() > SOFTEST)
                .max(Comparator.comparingDouble(Candidate::clear))
                .filter(pair -> best.isEmpty() || pair.clear() > best.get().clear() + TOGETHER);
        Optional<Candidate> other = together.or(() -> best);
        return other.filter(c -> mix.voice().loud() < c.voice().loud() - share - CANCELLED
                        || (mix.clear() < GOOD_ENOUGH && c.clear() > mix.clear() + clearer))
                .orElse(mix);
    }

    private static double mean(ChannelPowers powers, Channels heard, List<Integer> frames) {
        return frames.stream()
                .mapToDouble(frame -> powers.power(heard, frame))
                .average()
                .orElse(0);
    }

    /**
     * Frames of a file.
     *
     * @param loud those in which a take has its voice
     * @param quiet those in which it pauses
     */
    private record Frames(List<Integer> loud, List<Integer> quiet) {
        static Frames of(ChannelPowers take, Placement placement, int count) {
            double ticks = (double) ChannelPowers.FRAME * SoundTrack.TICKS;
            List<int[]> both = new ArrayList<>();
            for (int frame = 0; frame < take.frames(); frame++) {
                double at = placement.fileTicks(placement.takeStart().ticks() + (frame + 0.5) * ticks) / ticks;
                if (at >= 0 && at < count) {
                    both.add(new int[] {frame, (int) at});
                }
            }
            List<int[]> rising = both.stream()
                    .sorted(Comparator.comparingDouble(pair -> around(take, pair[0])))
                    .toList();
            int quiet = Math.min(rising.size(), Math.max(LEAST_QUIET, (int) Math.ceil(QUIET * rising.size())));
            int loud = (int) Math.ceil(LOUD * rising.size());
            return new Frames(
                    inFile(rising.subList(rising.size() - loud, rising.size())), inFile(rising.subList(0, quiet)));
        }

        private static List<Integer> inFile(List<int[]> frames) {
            return frames.stream().map(pair -> pair[1]).toList();
        }

        /** The loudest of a frame and its neighbours: a pause is quiet before and after, too. */
        private static double around(ChannelPowers take, int frame) {
            double most = 0;
            for (int i = Math.max(0, frame - 1); i <= Math.min(take.frames() - 1, frame + 1); i++) {
                most = Math.max(most, take.power(Channels.ALL, i));
            }
            return most;
        }
    }
}
