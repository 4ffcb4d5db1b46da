package org.bookholder.bench;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.footage.FootageMatcher;
import org.bookholder.footage.LongVoice;
import org.bookholder.footage.Placement;
import org.bookholder.footage.SoundTrack;
import org.bookholder.footage.StoredTrack;
import org.bookholder.footage.ffmpeg.FootageSound;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;

/**
 * Measures matching of a long take with a long camera file: another clock, echo, noise, AAC, started late. Prints how far out
 * the match is, how long it took and how much memory. Needs FFmpeg and some 600 MB below the temporary folder.
 *
 * <p>Argument: minutes (default 120).
 */
public final class LongMatch {
    private static final int LATE = 95;

    /** The camera's clock counts 16,000 samples for 16,001 of the take. */
    private static final double DRIFT = 16_000 / 16_001.0 - 1;

    private LongMatch() {}

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        int minutes = args.length == 0 ? 120 : Integer.parseInt(args[0]);
        Path folder = Files.createTempDirectory("bookholder-long");
        Path raw = folder.resolve("take.raw");
        Path take = folder.resolve("take.wav");
        Path film = folder.resolve("film.mp4");
        try {
            write(raw, minutes * 60L * Sound.RATE);
            String[] input = {"-v", "error", "-f", "s16be", "-ar", "16000", "-i", raw.toString()};
            Decoder.output("ffmpeg", with(input, take.toString()));
            Decoder.output(
                    "ffmpeg",
                    with(
                            input,
                            "-f",
                            "lavfi",
                            "-i",
                            "testsrc2=size=160x90:rate=25",
                            "-filter_complex",
                            "[0]atrim=start=" + LATE + ",asetpts=PTS-STARTPTS,asetrate=16001,highpass=f=150,"
                                    + "aecho=0.8:0.7:40:0.4,aresample=48000[v];anoisesrc=r=48000:a=0.01:c=pink[n];"
                                    + "[v][n]amix=inputs=2:duration=first:normalize=0[s]",
                            "-map",
                            "1:v",
                            "-map",
                            "[s]",
                            "-shortest",
                            "-c:v",
                            "mpeg4",
                            "-c:a",
                            "aac",
                            film.toString()));
            measure(take, film, minutes);
        } finally {
            for (Path file : new Path[] {raw, take, film, folder}) {
                Files.deleteIfExists(file);
            }
        }
    }

    private static void measure(Path take, Path film, int minutes) throws IOException, ProblemException {
        long begun = System.nanoTime();
        try (FootageSound takeSound = FootageSound.open(take, SoundTrack.RATE);
                FootageSound filmSound = FootageSound.open(film, SoundTrack.RATE);
                StoredTrack a = StoredTrack.of(takeSound::read);
                StoredTrack b = StoredTrack.of(filmSound::read)) {
            long decoded = System.nanoTime();
            Optional<Placement> found = new FootageMatcher().match(b, a, 1, StreamTime.ZERO);
            long done = System.nanoTime();
            print(
                    "%d minutes: decoded in %.0f s, matched in %.0f s",
                    minutes, seconds(begun, decoded), seconds(decoded, done));
            found.ifPresentOrElse(
                    f -> print(
                            "begins %.1f ms out, at the end %.1f ms; clock %+.2f ppm (made %+.2f); confidence %.2f",
                            1000 * out(f, LATE),
                            1000 * out(f, minutes * 60.0 - 1),
                            f.driftPpm(),
                            1e6 * DRIFT,
                            f.confidence()),
                    () -> print("not found"));
        }
        for (String line : Files.readAllLines(Path.of("/proc/self/status"))) {
            if (line.startsWith("VmHWM") || line.startsWith("RssAnon")) {
                print("%s", line);
            }
        }
    }

    private static double out(Placement found, double second) {
        return found.inFile(StreamTime.ofSeconds(second)) / (double) StreamTime.TICKS_PER_SECOND
                - (second - LATE) * (1 + DRIFT);
    }

    private static void write(Path raw, long samples) throws IOException {
        short[] reading =
                Decoder.wav(Path.of(System.getProperty("bookholder.home", "")).resolve("demo-scripts/lesson-1.wav"));
        float[] voice = new float[reading.length];
        for (int i = 0; i < voice.length; i++) {
            voice[i] = reading[i] / 32_768f;
        }
        LongVoice all = new LongVoice(voice, Sound.RATE, 1);
        try (DataOutputStream out = new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(raw)))) {
            for (long written = 0; written < samples; ) {
                float[] next = all.next();
                for (int i = 0; i < next.length && written < samples; i++, written++) {
                    out.writeShort(Math.max(-32_768, Math.min(32_767, Math.round(32_767 * next[i]))));
                }
            }
        }
    }

    private static String[] with(String[] first, String... then) {
        String[] all = Arrays.copyOf(first, first.length + then.length);
        System.arraycopy(then, 0, all, first.length, then.length);
        return all;
    }

    private static double seconds(long from, long to) {
        return (to - from) / 1e9;
    }

    private static void print(String form, Object... values) {
        System.out.println(String.format(Locale.ROOT, form, values));
    }
}
