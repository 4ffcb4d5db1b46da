package org.bookholder.follow.evidence;

import java.util.Arrays;
import org.bookholder.speech.FrameLevels;

/**
 * The noise of the room just outside something that was said: a fan that was switched on a while ago counts here, and one
 * that was switched on later does not. Looks at the frames when asked, so these must not change meanwhile.
 *
 * <p>The noise is a low quantile of the levels nearby, as in quantile-based noise estimation (V. Stahl, A. Fischer, R.
 * Bippus, ICASSP 2000): between words there is silence often enough, and unlike the least level, a quantile is not fooled by
 * a moment of lost sound. Levels are means over a short time first, as in minimum statistics (R. Martin, IEEE Transactions
 * on Speech and Audio Processing 9, 2001), so that steady noise hardly varies and soft sounds stand out from it.
 */
final class NearbyNoise {
    /** How far outside the noise is listened to, in frames: long enough to contain a pause or some closures. */
    private static final int WINDOW = 2 * FrameLevels.PER_SECOND;

    /** The share of these frames that is taken as noise. */
    private static final double SHARE = 0.1;

    /** How much louder than the noise something must be to be heard, in dB. */
    private static final double LEAST_DB = 1.5;

    /** Frames on each side over which a level is the mean. */
    static final int AROUND = 3;

    private final byte[] frames;
    private final int length;
    private final double threshold;

    private NearbyNoise(byte[] frames, int length, int first, int last, double most) {
        this.frames = frames;
        this.length = length;
        double[] levels = new double[last - first];
        Arrays.setAll(levels, i -> level(first + i));
        Arrays.sort(levels);
        threshold = Math.min(most, levels[(int) (SHARE * levels.length)] + LEAST_DB);
    }

    /**
     * The noise on one side of a frame.
     *
     * @param frame the frame, within the length
     * @param direction -1 for the time before it, 1 for the time after it
     * @param frames levels in dBFS; not copied
     * @param length how many of them are known
     * @param most louder than this, in dBFS, no noise is
     */
    static NearbyNoise beside(int frame, int direction, byte[] frames, int length, double most) {
        // Where too little is known outside, what was said counts too: it has closures.
        int last = direction < 0 ? Math.min(length, Math.max(frame, WINDOW)) : Math.min(length, frame + WINDOW);
        return new NearbyNoise(frames, length, Math.max(0, last - WINDOW), last, most);
    }

    /** Whether nothing is heard at a frame but the noise. */
    boolean drowns(int frame) {
        return level(frame) < threshold;
    }

    /** The mean power around a frame, in dBFS. */
    private double level(int frame) {
        int first = Math.max(0, frame - AROUND);
        int last = Math.min(length - 1, frame + AROUND);
        double power = 0;
        for (int i = first; i <= last; i++) {
            power += Math.pow(10, frames[i] / 10.0);
        }
        return 10 * Math.log10(power / (last - first + 1));
    }
}
