package org.bookholder.bench;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import org.bookholder.follow.graph.ScriptGrammar;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.Ear;
import org.bookholder.speech.Grammar;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.timing.StreamTime;

/**
 * Measures what the program costs on top of its two recognisers: the demo's recording is heard by the bare ears and read
 * as a whole session, with journal and tape, in turns in one process; all processor time of the process counts.
 *
 * <p>Two ears that listen at once cost more than one after the other, as each drives the other's model out of the
 * processor's caches. That is the recognisers' own cost, not the program's, so the bare ears are measured in both ways.
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
        hearAtOnce();
        read();
        double[] ratios = new double[rounds];
        double[] ratiosApart = new double[rounds];
        for (int i = 0; i < rounds; i++) {
            double apart = seconds(this::hearApart);
            double atOnce = seconds(this::hearAtOnce);
            double whole = seconds(this::read);
            ratios[i] = whole / atOnce;
            ratiosApart[i] = whole / apart;
            System.out.printf(
                    Locale.ROOT,
                    "%.1f s of sound: bare ears one after the other %.2f s, at once %.2f s, whole reading %.2f s%n",
                    (double) sound.length / Sound.RATE,
                    apart,
                    atOnce,
                    whole);
        }
        System.out.printf(
                Locale.ROOT,
                "median ratio of the whole reading to the ears at once %.3f (to reach: %.2f at most), one after the other %.3f%n",
                median(ratios),
                TO_REACH,
                median(ratiosApart));
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        return values[values.length / 2];
    }

    private double seconds(Runnable work) {
        long before = process.getProcessCpuTime();
        work.run();
        return (process.getProcessCpuTime() - before) / 1e9;
    }

    private void hearApart() {
        try (Ear scriptEar = ears.scriptEar(grammar, Sound.RATE);
                Ear openEar = ears.openEar(Sound.RATE)) {
            blocks(SCRIPT_BLOCK).forEach(scriptEar::hear);
            scriptEar.finish();
            blocks(OPEN_BLOCK).forEach(openEar::hear);
            openEar.finish();
        }
    }

    /** The open ear first, as a file is read. */
    private void hearAtOnce() {
        try (Ear scriptEar = ears.scriptEar(grammar, Sound.RATE);
                Ear openEar = ears.openEar(Sound.RATE)) {
            Iterator<AudioBlock> left = blocks(OPEN_BLOCK).iterator();
            StreamTime opened = StreamTime.ZERO;
            for (AudioBlock block : blocks(SCRIPT_BLOCK)) {
                while (left.hasNext() && opened.isBefore(block.end())) {
                    AudioBlock next = left.next();
                    openEar.hear(next);
                    opened = next.end();
                }
                scriptEar.hear(block);
            }
            scriptEar.finish();
            openEar.finish();
        }
    }

    private List<AudioBlock> blocks(int samples) {
        return FakeAudioSource.blocks(Sound.RATE, StreamTime.ZERO, samples, sound);
    }

    private void read() {
        ReadingRun.read(script, FakeAudioSource.of(Sound.RATE, sound), ears);
    }
}
