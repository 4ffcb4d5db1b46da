package org.bookholder.footage;

import java.util.List;

/**
 * Finds out whether what was matched is the voice itself or an echo of it that is louder.
 *
 * <p>From many windows that lie on the line together the path from one microphone to the other is worked out (the ratio
 * of mean cross-spectrum to mean power spectrum, weighted by how far the two go together). Along that path the voice
 * itself comes first, its echoes after it, however loud they are. An echo in the take makes nothing come earlier there.
 *
 * <p>Confined to one thread.
 */
final class DirectPathFinder {
    /**
     * Echoes that come later than this after the voice are too weak to be taken for it (common practice: a small room).
     */
    private static final int EARLIEST = 80 * SoundTrack.RATE / 1000;

    /** As far again nothing can be but noise, which is learnt from there. */
    private static final int BEFORE = 2 * EARLIEST;

    /** Nearer than this to the strongest sound is that sound itself, through a microphone of its own colour. */
    private static final int SAME = 2 * SoundTrack.RATE / 1000;

    /** What comes earlier is the voice if it is this loud beside the strongest sound. */
    private static final double LOUD = 0.35;

    /** And this loud beside the noise, in root mean squares. */
    private static final double CLEAR = 5;

    /** The microphones' colours are levelled out over so many hertz. */
    private static final double LEVELLED = 250;

    private final PhaseCorrelator correlator;
    private final double hertz;

    DirectPathFinder(PhaseCorrelator correlator) {
        this.correlator = correlator;
        hertz = (double) SoundTrack.RATE / correlator.size();
    }

    /**
     * The voice itself.
     *
     * @param lead by how much it comes before what was matched, in samples; 0 if that is it
     * @param doubt how loud the loudest of what comes still earlier is beside it, 0 to 1
     */
    record Found(int lead, double doubt) {}

    /** Looks before a line, in windows of {@code piece} samples. */
    Found look(SoundTrack film, SoundTrack take, ClockFit line, List<ClockFit.Point> windows, int piece) {
        double[] path = path(film, take, line, windows, piece);
        int main = strongest(path, BEFORE - SAME, BEFORE + SAME + 1);
        double floor = Math.max(LOUD * path[main], CLEAR * noise(path));
        int direct = main;
        for (int i = main - EARLIEST; i < main - SAME; i++) {
            if (path[i] >= floor) {
                direct = strongest(path, i, Math.min(i + SAME, main - SAME));
                break;
            }
        }
        int earlier = strongest(path, direct - EARLIEST, direct - SAME);
        return new Found(main - direct, Math.min(1, path[earlier] / path[direct]));
    }

    /** How strongly the sound arrives, {@link #BEFORE} samples before the line until as many after. */
    private double[] path(SoundTrack film, SoundTrack take, ClockFit line, List<ClockFit.Point> windows, int piece) {
        int bins = correlator.size() / 2;
        double[] re = new double[bins];
        double[] im = new double[bins];
        double[] powerThere = new double[bins];
        double[] powerHere = new double[bins];
        for (ClockFit.Point window : windows) {
            long at = (long) window.at();
            long from = Math.round(line.showsAt(window.at())) - BEFORE;
            float[] there = correlator.spectrum(film.read(from, piece + 2 * BEFORE));
            float[] here = correlator.spectrum(take.read(at, piece));
            for (int k = 1; k < bins; k++) {
                re[k] += there[2 * k] * here[2 * k] + there[2 * k + 1] * here[2 * k + 1];
                im[k] += there[2 * k + 1] * here[2 * k] - there[2 * k] * here[2 * k + 1];
                powerThere[k] += there[2 * k] * there[2 * k] + there[2 * k + 1] * there[2 * k + 1];
                powerHere[k] += here[2 * k] * here[2 * k] + here[2 * k + 1] * here[2 * k + 1];
            }
        }
        double[] size = new double[bins];
        for (int k = 1; k < bins; k++) {
            size[k] = powerHere[k] == 0 ? 0 : Math.hypot(re[k], im[k]) / powerHere[k];
        }
        double[] level = smooth(size);
        float[] ratio = new float[correlator.size()];
        for (int k = (int) (PhaseCorrelator.LOWEST / hertz); k <= PhaseCorrelator.HIGHEST / hertz; k++) {
            double both = powerHere[k] * powerThere[k];
            if (both > 0 && level[k] > 0) {
                double together = (re[k] * re[k] + im[k] * im[k]) / both;
                double weight = together / (powerHere[k] * level[k]);
                ratio[2 * k] = (float) (weight * re[k]);
                ratio[2 * k + 1] = (float) (weight * im[k]);
            }
        }
        float[] response = correlator.inverse(ratio);
        double[] path = new double[2 * BEFORE];
        for (int i = 0; i < path.length; i++) {
            path[i] = Math.abs(response[i]);
        }
        return path;
    }

    /** The mean over the neighbourhood. */
    private double[] smooth(double[] values) {
        int reach = (int) (LEVELLED / hertz);
        double[] sums = new double[values.length + 1];
        for (int k = 0; k < values.length; k++) {
            sums[k + 1] = sums[k] + values[k];
        }
        double[] smooth = new double[values.length];
        for (int k = 0; k < values.length; k++) {
            int from = Math.max(0, k - reach);
            int to = Math.min(values.length, k + reach + 1);
            smooth[k] = (sums[to] - sums[from]) / (to - from);
        }
        return smooth;
    }

    private static int strongest(double[] path, int from, int to) {
        int best = Math.max(0, from);
        for (int i = best; i < to; i++) {
            best = path[i] > path[best] ? i : best;
        }
        return best;
    }

    private static double noise(double[] path) {
        double squares = 0;
        int count = BEFORE - EARLIEST - SAME;
        for (int i = 0; i < count; i++) {
            squares += path[i] * path[i];
        }
        return Math.sqrt(squares / count);
    }
}
