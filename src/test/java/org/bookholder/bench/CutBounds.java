package org.bookholder.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.bench.Truth.Passage;
import org.bookholder.bench.Truth.SaidAside;
import org.bookholder.cutlist.Clip;
import org.bookholder.cutlist.CutPlanner;
import org.bookholder.cutlist.CutRules;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/**
 * Measures where readings are cut: how far the cut list's in and out points, in frames at 25 a second, lie from where the
 * utterances were laid down, which have 0.08 s of quiet around them as clips are to have; and whether a cut falls between the
 * first and the last sound of a voice. Prints the table of {@code docs/accuracy.md}, "Accuracy of the cuts".
 *
 * <p>Arguments: seeds (default 1).
 */
public final class CutBounds {
    private static final FrameRate RATE = FrameRate.FPS_25;
    private static final double NEAR = 0.12;

    /** Half a frame: a cut cannot be closer to its ideal place. */
    private static final double HALF_A_FRAME = 0.02;

    private static final List<Flite> VOICES =
            List.of(new Flite("rms", 1.0), new Flite("slt", 1.0), new Flite("awb", 1.0));

    private final List<Double> distances = new ArrayList<>();
    private int cuts;
    private int within;

    private CutBounds() {}

    /** Measures and prints. */
    public static void main(String[] args) throws ProblemException {
        Path home = Path.of(System.getProperty("bookholder.home", "")).toAbsolutePath();
        CutBounds recorded = new CutBounds();
        CutBounds synthetic = new CutBounds();
        try (VoskEars ears = VoskEars.load(home.resolve("models/vosk-model-en-us"))) {
            for (String seed : args.length == 0 ? new String[] {"1"} : args) {
                for (Composition reading : recorded(Long.parseLong(seed))) {
                    recorded.measure(reading, ears);
                }
                for (Flite voice : VOICES) {
                    synthetic.measure(
                            Composer.compose(
                                    voice.lessons(home.resolve("demo-scripts")),
                                    0,
                                    Recipe.eventful(),
                                    Long.parseLong(seed)),
                            ears);
                }
            }
        }
        recorded.print("recorded");
        synthetic.print("synthetic");
    }

    private static List<Composition> recorded(long seed) {
        List<Composition> readings = new ArrayList<>();
        if (Files.isDirectory(Recordings.PROMPTS)) {
            Voice prompts = Recordings.prompts();
            int lines = Recipe.eventful().lines();
            for (int first = 0; first + lines <= prompts.utterances().size(); first += lines) {
                readings.add(Composer.compose(prompts, first, Recipe.eventful(), 1000 * seed + first));
            }
        }
        if (Files.isDirectory(Recordings.NOVEL)) {
            readings.add(Composer.compose(Recordings.novel(), 0, Recipe.brief(), seed));
        }
        return readings;
    }

    private void measure(Composition reading, VoskEars ears) throws ProblemException {
        ReadingRun.Ended ended =
                ReadingRun.read(reading.script(), FakeAudioSource.of(Sound.RATE, reading.sound()), ears);
        Truth truth = reading.truth();
        Truth voices = voiced(reading);
        for (Clip clip : CutPlanner.plan(ended.state(), CutRules.defaults(), sound(reading))
                .clips()) {
            List<Attempt> attempts = clip.attempts();
            double in = frames(clip.in());
            double out = frames(clip.out());
            add(reading, in - passage(truth, attempts.get(0)).start(), "in", clip);
            add(reading, out - passage(truth, attempts.get(attempts.size() - 1)).end(), "out", clip);
            cuts += 2;
            within += within(reading, voices, in) + within(reading, voices, out);
        }
    }

    /** The truth with each passage as long as its voice: utterances are laid down with some quiet around them. */
    private static Truth voiced(Composition reading) {
        Truth truth = reading.truth();
        List<Passage> passages = truth.passages().stream()
                .map(p -> {
                    double[] voice = voice(reading, p.start(), p.end());
                    return new Passage(p.line(), voice[0], voice[1], p.complete());
                })
                .toList();
        List<SaidAside> asides = truth.asides().stream()
                .map(a -> {
                    double[] voice = voice(reading, a.start(), a.end());
                    return new SaidAside(a.afterLine(), voice[0], voice[1]);
                })
                .toList();
        return new Truth(truth.lines(), passages, asides, truth.seconds());
    }

    private static double[] voice(Composition reading, double start, double end) {
        int from = (int) Math.round(start * Sound.RATE);
        int[] voice = Sound.voice(Sound.part(reading.sound(), from, (int) Math.round(end * Sound.RATE)));
        return new double[] {(double) (from + voice[0]) / Sound.RATE, (double) (from + voice[1]) / Sound.RATE};
    }

    private void add(Composition reading, double distance, String point, Clip clip) {
        distances.add(Math.abs(distance));
        if (Math.abs(distance) > NEAR) {
            System.out.printf(
                    Locale.ROOT,
                    "%s, seed %d, lines %s: %s point %+.2f s%n",
                    reading.name(),
                    reading.seed(),
                    clip.lines(),
                    point,
                    distance);
        }
    }

    /** The passage that an attempt corresponds to; a complete one if there is any. */
    private static Passage passage(Truth truth, Attempt attempt) {
        List<Passage> complete = truth.completeOf(attempt.line());
        double middle = (attempt.start().seconds() + attempt.end().seconds()) / 2;
        return (complete.isEmpty() ? truth.of(attempt.line()) : complete)
                .stream()
                        .min((a, b) -> Double.compare(far(a, middle), far(b, middle)))
                        .orElseThrow(() -> new IllegalStateException("line " + attempt.line() + " was never read"));
    }

    private static double far(Passage passage, double second) {
        return Math.abs((passage.start() + passage.end()) / 2 - second);
    }

    /** Returns 1, and prints a message, if something is being said there. */
    private static int within(Composition reading, Truth truth, double second) {
        boolean line = truth.passages().stream()
                .anyMatch(p -> p.start() + HALF_A_FRAME < second && second < p.end() - HALF_A_FRAME);
        boolean aside = truth.asides().stream()
                .anyMatch(a -> a.start() + HALF_A_FRAME < second && second < a.end() - HALF_A_FRAME);
        if (line || aside) {
            System.out.printf(
                    Locale.ROOT,
                    "%s, seed %d: the cut at %.2f s falls into %s%n",
                    reading.name(),
                    reading.seed(),
                    second,
                    line ? "a line" : "an aside");
        }
        return line || aside ? 1 : 0;
    }

    private static double frames(StreamTime time) {
        return RATE.nearestFrame(time.ticks()) / RATE.perSecond();
    }

    private static TakeSound sound(Composition reading) {
        short[] all = reading.sound();
        return (take, from, to) -> {
            int first = (int) Math.max(0, from.samples(Sound.RATE));
            int last = (int) Math.min(all.length, to.samples(Sound.RATE));
            return first >= last
                    ? Optional.empty()
                    : Optional.of(new AudioBlock(
                            StreamTime.ofSamples(first, Sound.RATE), Sound.RATE, Sound.part(all, first, last)));
        };
    }

    private void print(String name) {
        if (distances.isEmpty()) {
            System.out.println(name + ": nothing was read (see the packages in docs/accuracy.md)");
            return;
        }
        List<Double> sorted = distances.stream().sorted().toList();
        long near = sorted.stream().filter(d -> d <= NEAR).count();
        System.out.printf(
                Locale.ROOT,
                "%s: within 0.12 s %.3f (%d/%d); median %.3f s, 95 %% %.3f s; cuts within something said %d/%d%n",
                name,
                (double) near / sorted.size(),
                near,
                sorted.size(),
                sorted.get(sorted.size() / 2),
                sorted.get((int) Math.ceil(0.95 * sorted.size()) - 1),
                within,
                cuts);
    }
}
