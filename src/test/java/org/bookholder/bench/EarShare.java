package org.bookholder.bench;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import org.bookholder.follow.ScriptGrammar;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.ScriptPreparer;
import org.bookholder.script.ScriptReader;
import org.bookholder.script.ScriptReader.Format;
import org.bookholder.speech.Ear;
import org.bookholder.speech.Grammar;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.timing.StreamTime;

/**
 * Measures what the program costs on top of its two recognisers: the demo's recording is heard by the bare ears and read
 * as a whole session, with journal and tape, in turns in one process; all processor time of the process counts.
 *
 * <p>Argument: how often (default 5).
 */
public final class EarShare {
    private static final double TO_REACH = 1.15;

    /** As the stages of a take cut the sound for each ear. */
    private static final int SCRIPT_BLOCK = Sound.RATE / 25;

    private static final int OPEN_BLOCK = Sound.RATE / 10;

    private final OperatingSystemMXBean process = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private final VoskEars ears;
    private final String script;
    private final Grammar grammar;
    private final short[] sound;

    private EarShare(VoskEars ears, Path lesson, Path recording) throws ProblemException, IOException {
        this.ears = ears;
        script = Files.readString(lesson);
        grammar = ScriptGrammar.of(ScriptPreparer.prepare(
                        ScriptReader.parse(script, lesson.toString(), Format.MARKDOWN), ears.vocabulary()))
                .orElseThrow();
        sound = Decoder.wav(recording);
    }

    /** Measures and prints. */
    public static void main(String[] args) throws ProblemException, IOException {
        Path home = Path.of(System.getProperty("bookholder.home", "")).toAbsolutePath();
        Path demo = home.resolve("demo-scripts");
        int rounds = args.length > 0 ? Integer.parseInt(args[0]) : 5;
        try (VoskEars ears = VoskEars.load(home.resolve("models/vosk-model-en-us"))) {
            new EarShare(ears, demo.resolve("lesson-1.md"), demo.resolve("lesson-1.wav")).measure(rounds);
        }
    }

    private void measure(int rounds) {
        hear();
        read();
        double[] ratios = new double[rounds];
        for (int i = 0; i < rounds; i++) {
            double bare = seconds(this::hear);
            double whole = seconds(this::read);
            ratios[i] = whole / bare;
            System.out.printf(
                    Locale.ROOT,
                    "%.1f s of sound: bare ears %.2f s, whole reading %.2f s, ratio %.3f%n",
                    (double) sound.length / Sound.RATE,
                    bare,
                    whole,
                    ratios[i]);
        }
        Arrays.sort(ratios);
        System.out.printf(Locale.ROOT, "median ratio %.3f (to reach: %.2f at most)%n", ratios[rounds / 2], TO_REACH);
    }

    private double seconds(Runnable work) {
        long before = process.getProcessCpuTime();
        work.run();
        return (process.getProcessCpuTime() - before) / 1e9;
    }

    private void hear() {
        try (Ear scriptEar = ears.scriptEar(grammar, Sound.RATE);
                Ear openEar = ears.openEar(Sound.RATE)) {
            hear(scriptEar, SCRIPT_BLOCK);
            hear(openEar, OPEN_BLOCK);
        }
    }

    private void hear(Ear ear, int samples) {
        FakeAudioSource.blocks(Sound.RATE, StreamTime.ZERO, samples, sound).forEach(ear::hear);
        ear.finish();
    }

    private void read() {
        ReadingRun.read(script, FakeAudioSource.of(Sound.RATE, sound), ears);
    }
}
