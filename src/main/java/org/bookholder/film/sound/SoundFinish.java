package org.bookholder.film.sound;

import java.nio.FloatBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.film.program.FfmpegRun;
import org.bookholder.film.program.Pause;
import org.bookholder.problem.ProblemException;
import org.bookholder.sound.LoudnessMeter;
import org.bookholder.sound.LoudnessReading;

/**
 * Brings the mixed sound to its loudness: rumble is cut, then the whole gets one gain, and peaks that would pass the limit are
 * held down for some milliseconds. So quiet passages stay as quiet beside loud ones as they were read. Confined to one thread.
 */
public final class SoundFinish {
    /** A Butterworth filter of the fourth order: 22 dB less at 40 Hz, half a decibel at 100 Hz. */
    private static final String NO_RUMBLE = "highpass=f=75:t=q:w=0.541,highpass=f=75:t=q:w=1.307";

    /** How far below its limit a peak is held: encoding may raise it by about as much. */
    private static final double MARGIN = 1.0;

    /** Near enough, in LU. */
    private static final double NEAR = 0.1;

    private static final int ROUNDS = 4;

    /** Our choice: more gain would make a recording loud of which hardly anything was recorded. */
    private static final double MOST_GAIN = 40;

    private static final int BLOCK = 4800;

    private final Path folder;
    private final double loudness;
    private final double truePeak;
    private final Pause pause;

    /**
     * The finished sound.
     *
     * @param file its file, like that of the mix
     * @param reading what it measures, heard on both ears
     * @param held whether peaks had to be held down
     */
    public record Finished(Path file, LoudnessReading reading, boolean held) {}

    /**
     * Begins.
     *
     * @param folder where its files go
     * @param loudness that it is to have, in LUFS
     * @param truePeak the most that it may have, in dBTP
     */
    public SoundFinish(Path folder, double loudness, double truePeak, Pause pause) {
        this.folder = folder;
        this.loudness = loudness;
        this.truePeak = truePeak;
        this.pause = pause;
    }

    /**
     * Finishes a mix.
     *
     * @throws ProblemException if there is no room
     */
    public Finished finish(Path mix) throws ProblemException {
        Path clean = filtered(mix, NO_RUMBLE, "clean.f32");
        LoudnessReading before = measured(clean);
        if (before.integrated() == Double.NEGATIVE_INFINITY) {
            return new Finished(clean, before, false);
        }
        double gain = Math.min(MOST_GAIN, loudness - before.integrated());
        double ceiling = truePeak - MARGIN;
        if (before.truePeak() + gain <= ceiling) {
            Path loud = filtered(clean, gain(gain), "loud.f32");
            return new Finished(loud, measured(loud), false);
        }
        Path loud = clean;
        LoudnessReading now = before;
        for (int round = 1; round <= ROUNDS; round++) {
            loud = filtered(clean, gain(gain) + "," + held(ceiling), "loud-" + round + ".f32");
            now = measured(loud);
            if (Math.abs(now.integrated() - loudness) < NEAR) {
                break;
            }
            gain = Math.min(MOST_GAIN, gain + loudness - now.integrated());
        }
        return new Finished(loud, now, true);
    }

    private static String gain(double decibels) {
        return String.format(Locale.ROOT, "volume=%.3fdB:precision=float", decibels);
    }

    /** Peaks between the samples are seen at four times the rate; without latency=1 the sound would come late. */
    private static String held(double ceiling) {
        return String.format(
                Locale.ROOT,
                "aresample=192000,alimiter=limit=%.4f:attack=5:release=50:level=disabled:latency=1,aresample=48000",
                Math.pow(10, ceiling / 20));
    }

    private Path filtered(Path from, String filter, String name) throws ProblemException {
        List<String> arguments = new ArrayList<>(input(from));
        arguments.addAll(List.of("-af", filter, "-f", "f32le", "-c:a", "pcm_f32le", name));
        try (FfmpegRun run = FfmpegRun.start("the film's sound", arguments, folder, name + ".log")) {
            while (run.runs()) {
                pause.rest();
            }
            run.check();
        }
        return folder.resolve(name);
    }

    /** The arguments of FFmpeg's program that name such a file, which lies in the folder in which it works. */
    public static List<String> input(Path file) {
        return List.of(
                "-f",
                "f32le",
                "-ar",
                Integer.toString(FilmSound.rate()),
                "-ch_layout",
                "mono",
                "-i",
                String.valueOf(file.getFileName()));
    }

    private static LoudnessReading measured(Path file) throws ProblemException {
        FloatBuffer samples = SampleFile.read(file);
        // One voice that is heard on two ears.
        LoudnessMeter meter = new LoudnessMeter(FilmSound.rate(), 2);
        while (samples.hasRemaining()) {
            float[] block = new float[Math.min(BLOCK, samples.remaining())];
            samples.get(block);
            meter.hear(new float[][] {block});
        }
        return meter.reading();
    }
}
