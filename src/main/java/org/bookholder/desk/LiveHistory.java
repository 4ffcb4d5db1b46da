package org.bookholder.desk;

import java.util.List;
import org.bookholder.session.SessionState;
import org.bookholder.session.Sound;
import org.bookholder.sound.PeakLevel;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.TroubleText;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/**
 * History that the state itself does not hold: the pace of each second, and the sound of the last half minute. Built
 * from one state after another; states may be skipped. Immutable.
 *
 * @param pace the live pace, a point for each second of audio in which a take rolled
 * @param heard the sound of the last seconds, oldest first
 * @param clippedAt when a sample was last clipped; zero if none was
 * @param wrong what is wrong with the sound now, empty if nothing is
 * @param since when that began
 */
public record LiveHistory(
        PVector<PacePoint> pace, PVector<SoundPoint> heard, StreamTime clippedAt, String wrong, StreamTime since) {
    /** Nothing seen yet. */
    public static final LiveHistory NONE =
            new LiveHistory(TreePVector.empty(), TreePVector.empty(), StreamTime.ZERO, "", StreamTime.ZERO);

    /** How many seconds of sound are kept. */
    private static final int SECONDS = 30;

    /** Seconds for which the highest peak is held. */
    private static final int HOLD = 5;

    /** How long clipping is shown after it was heard, in seconds. */
    private static final double CLIPPING_TOLD = 10;

    private static final double SILENT = -90;

    /**
     * The live pace at one second.
     *
     * @param second second of the session's audio
     * @param take the take in which it was measured
     * @param perMinute words per minute, NaN if unknown
     */
    public record PacePoint(long second, int take, double perMinute) {}

    /** The sound at a second of the session's audio, in dBFS. */
    public record SoundPoint(long second, double rms, double peak, long clipped) {}

    /** The history after one more state. */
    public LiveHistory after(SessionState state) {
        long second = (long) state.now().seconds();
        if (!state.takes().rolling()) {
            return told(state, heard, clippedAt, pace);
        }
        PVector<PacePoint> more = pace;
        if (pace.isEmpty() || pace.get(pace.size() - 1).second() < second) {
            int take = state.takes().last().number();
            more = pace.plus(new PacePoint(second, take, state.measures().pace().figure()));
        }
        PVector<SoundPoint> sounds = heard;
        StreamTime clipped = clippedAt;
        Sound sound = state.measures().sound();
        long clippedBefore = heard.isEmpty() ? 0 : heard.get(heard.size() - 1).clipped();
        if (sound.clipped() > clippedBefore) {
            clipped = state.now();
        }
        SoundPoint point = new SoundPoint(second, sound.rms(), sound.peak(), sound.clipped());
        if (heard.isEmpty() || !heard.get(heard.size() - 1).equals(point)) {
            sounds = heard.size() >= SECONDS ? heard.minus(0).plus(point) : heard.plus(point);
        }
        return told(state, sounds, clipped, more);
    }

    private LiveHistory told(
            SessionState state, PVector<SoundPoint> sounds, StreamTime clipped, PVector<PacePoint> points) {
        String now = amiss(state, sounds, clipped);
        boolean same = now.equals(wrong);
        return new LiveHistory(points, sounds, clipped, now, same ? since : state.now());
    }

    private static String amiss(SessionState state, List<SoundPoint> sounds, StreamTime clipped) {
        if (!state.troubles().isEmpty()) {
            return TroubleText.of(state.troubles());
        }
        if (!state.takes().rolling() || sounds.isEmpty()) {
            return "";
        }
        if (clipped.ticks() > 0 && state.now().since(clipped).seconds() < CLIPPING_TOLD) {
            return "too loud: cut off at full scale";
        }
        if (sounds.size() >= HOLD && PeakLevel.of(loudest(sounds, HOLD)) == PeakLevel.NONE) {
            return "no sound comes in";
        }
        if (PeakLevel.of(loudest(sounds, HOLD)) == PeakLevel.TOO_HIGH) {
            return "too loud";
        }
        return sounds.size() >= SECONDS / 2 && level(sounds) == PeakLevel.TOO_LOW ? "too low" : "";
    }

    /** The highest peak of the last seconds, in dBFS. */
    public double hold() {
        return loudest(heard, HOLD);
    }

    /** The lowest level of the last seconds, in dBFS: the noise of the room. NaN if too little was heard. */
    public double room() {
        return heard.size() < HOLD
                ? Double.NaN
                : heard.stream()
                        .mapToDouble(SoundPoint::rms)
                        .filter(rms -> rms > SILENT)
                        .min()
                        .orElse(Double.NaN);
    }

    /** How the level of the last seconds is, by the rule of the sound check. */
    public PeakLevel level() {
        return level(heard);
    }

    private static PeakLevel level(List<SoundPoint> sounds) {
        return sounds.isEmpty() ? PeakLevel.NONE : PeakLevel.of(loudest(sounds, SECONDS));
    }

    private static double loudest(List<SoundPoint> sounds, int last) {
        return sounds.stream()
                .skip(Math.max(0, sounds.size() - last))
                .mapToDouble(SoundPoint::peak)
                .max()
                .orElse(Double.NaN);
    }
}
