package org.bookholder.delivery;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.footage.SharedStretch;
import org.bookholder.footage.SoundTrack;
import org.bookholder.sound.Decibels;
import org.bookholder.sound.KWeighting;

/**
 * Finds cuts at which a film's loudness jumps by more than the reader's own. A reader's lines differ by more than such jumps, so that the
 * film alone does not tell them; beside the take they show. Confined to one thread.
 */
final class LevelJumps {
    static final String KIND = "level";

    private static final int FRAME = SoundTrack.RATE / 10;

    /** What stands beside a cut belongs partly to the other side. */
    private static final int MARGIN = SoundTrack.RATE / 4;

    /** So much voice is needed before and after a cut, in frames: what stands farther away is looked at only where there is less. */
    private static final int LEAST = 20;

    /** A frame is voice if it is not softer than the loudest one by more, as power: 20 dB. */
    private static final double VOICE = 0.01;

    /** The most that the film may change, in itself and against the take, in LU. */
    private static final double MOST = 3;

    /** Where the reader's own voice changes by more, in LU, the film may have evened that, or the reader's lines differ anyway. */
    private static final double STEADY = 2;

    /** What stands farther away counts only if it is as loud against the take as what stands near, within so many decibels. */
    private static final double ALIKE = 1.5;

    /** A place differs by more than this, in samples, where something was cut out; clocks differ by less. */
    private static final double CUT = 0.005 * SoundTrack.RATE;

    private final SoundTrack film;

    LevelJumps(SoundTrack film) {
        this.film = film;
    }

    /**
     * A stretch's voice.
     *
     * @param stretch which
     * @param film its loudness in the film, frame by frame, as power
     * @param take the same of the take
     */
    private record Voice(SharedStretch stretch, List<Double> film, List<Double> take) {
        double gain() {
            double[] gains = new double[film.size()];
            Arrays.setAll(gains, i -> Decibels.ofPower(film.get(i)) - Decibels.ofPower(take.get(i)));
            Arrays.sort(gains);
            return gains[gains.length / 2];
        }

        double inFilm() {
            return level(film);
        }

        double inTake() {
            return level(take);
        }

        private static double level(List<Double> powers) {
            return Decibels.ofPower(
                    powers.stream().mapToDouble(Double::doubleValue).average().orElse(0));
        }

        Voice and(Voice other) {
            List<Double> films = new ArrayList<>(film);
            films.addAll(other.film);
            List<Double> takes = new ArrayList<>(take);
            takes.addAll(other.take);
            return new Voice(stretch, films, takes);
        }
    }

    List<Finding> of(List<SharedStretch> stretches) {
        List<Voice> voices = stretches.stream().map(this::voice).toList();
        List<Finding> findings = new ArrayList<>();
        for (int i = 1; i < voices.size(); i++) {
            if (cut(stretches.get(i - 1), stretches.get(i))) {
                jump(beside(voices, i - 1, -1), beside(voices, i, 1)).ifPresent(findings::add);
            }
        }
        return findings;
    }

    /** Whether there is a cut between two stretches of one take; between two takes the reader or the microphone may have moved. */
    private static boolean cut(SharedStretch before, SharedStretch after) {
        return before.take() == after.take() && Math.abs(before.ahead() - after.ahead()) > CUT;
    }

    private static Voice beside(List<Voice> voices, int first, int step) {
        Voice all = voices.get(first);
        for (int i = first + step; i >= 0 && i < voices.size() && all.film().size() < LEAST; i += step) {
            Voice next = voices.get(i);
            boolean alike = all.film().isEmpty() || next.film().isEmpty() || Math.abs(all.gain() - next.gain()) < ALIKE;
            if (!alike || next.stretch().take() != all.stretch().take()) {
                break;
            }
            all = all.and(next);
        }
        return all;
    }

    private static Optional<Finding> jump(Voice before, Voice after) {
        if (Math.min(before.film().size(), after.film().size()) < LEAST) {
            return Optional.empty();
        }
        double jump = after.gain() - before.gain();
        double heard = after.inFilm() - before.inFilm();
        double read = after.inTake() - before.inTake();
        boolean little = Math.min(Math.abs(jump), Math.abs(heard)) <= MOST || jump * heard < 0;
        if (little || Math.abs(read) >= STEADY) {
            return Optional.empty();
        }
        // Stretches may overlap by half a second.
        long first = Math.min(before.stretch().end(), after.stretch().film());
        long last = Math.max(before.stretch().end(), after.stretch().film());
        return Optional.of(TakeCheck.at(
                first,
                last,
                Grade.LOOK,
                KIND,
                String.format(
                        Locale.ROOT,
                        "the sound gets %.0f LU %s at a cut; in the take it does not",
                        Math.abs(heard),
                        heard > 0 ? "louder" : "softer"),
                "bring both sides of the cut to one level"));
    }

    private Voice voice(SharedStretch stretch) {
        int length = (int) Math.max(0, stretch.length() - 2 * MARGIN);
        double[] ours = frames(film.read(stretch.film() + MARGIN, length));
        double[] theirs = frames(stretch.take().read(stretch.inTake(stretch.film() + MARGIN), length));
        double least = VOICE * Arrays.stream(theirs).max().orElse(0);
        List<Double> inFilm = new ArrayList<>();
        List<Double> inTake = new ArrayList<>();
        for (int i = 0; i < theirs.length; i++) {
            if (theirs[i] > least && ours[i] > 0) {
                inFilm.add(ours[i]);
                inTake.add(theirs[i]);
            }
        }
        return new Voice(stretch, inFilm, inTake);
    }

    private static double[] frames(float[] samples) {
        KWeighting weighting = new KWeighting(SoundTrack.RATE);
        double[] powers = new double[samples.length / FRAME];
        for (int i = 0; i < powers.length * FRAME; i++) {
            double weighted = weighting.pass(samples[i]);
            powers[i / FRAME] += weighted * weighted / FRAME;
        }
        return powers;
    }
}
