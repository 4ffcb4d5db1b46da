package org.bookholder.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.bookholder.bench.ReadingRun.Ended;
import org.bookholder.follow.model.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.timing.StreamTime;

/**
 * Reads a very long lesson in one take, faster than real time, and prints the process's resident memory after every ten
 * minutes of sound. Needs Linux and the Debian package flite.
 *
 * <p>Argument: minutes of sound (default 180).
 */
public final class Soak {
    private static final int LINES_A_MINUTE = 18;
    private static final double PRINTED_EVERY = 600;

    private Soak() {}

    /** Reads and prints. */
    public static void main(String[] args) throws ProblemException {
        int minutes = args.length > 0 ? Integer.parseInt(args[0]) : 180;
        Path home = Path.of(System.getProperty("bookholder.home", "")).toAbsolutePath();
        WorkshopTalk talk = new WorkshopTalk(new Random(1));
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < LINES_A_MINUTE * minutes; i++) {
            lines.add(talk.line());
        }
        String script = "---\nlines: as-written\n---\n" + String.join("\n", lines) + "\n";
        try (VoskEars ears = VoskEars.load(home.resolve("models/vosk-model-en-us"))) {
            System.out.printf(Locale.ROOT, "  0 min: %d MB%n", residentMegabytes());
            Ended ended = ReadingRun.read(script, new Reader(lines, 60.0 * minutes), ears);
            long clean = ended.state().lines().all().stream()
                    .filter(l -> l.outcome() == Outcome.CLEAN)
                    .count();
            System.out.printf(
                    Locale.ROOT,
                    "read to line %d of %d, %d clean; %d MB after the take was settled%n",
                    ended.state().following().position().line(),
                    lines.size(),
                    clean,
                    residentMegabytes());
        }
    }

    private static long residentMegabytes() {
        try {
            return Files.readAllLines(Path.of("/proc/self/status")).stream()
                    .filter(line -> line.startsWith("VmRSS:"))
                    .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
                    .findFirst()
                    .orElseThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A voice that says line after line, each made when it is wanted. */
    private static final class Reader implements AudioSource {
        private static final int BLOCK = Sound.RATE / 25;

        private final Flite voice = new Flite("rms", 1.0);
        private final Random random = new Random(2);
        private final Deque<String> lines;
        private final long length;
        private short[] sound = new short[0];
        private int at;
        private long given;
        private double nextPrint = PRINTED_EVERY;

        Reader(List<String> lines, double seconds) {
            this.lines = new ArrayDeque<>(lines);
            length = (long) (seconds * Sound.RATE);
        }

        @Override
        public String name() {
            return "flite";
        }

        @Override
        public int rate() {
            return Sound.RATE;
        }

        @Override
        public AudioRead read() {
            if (given >= length || (at == sound.length && lines.isEmpty())) {
                return new AudioRead.Ended();
            }
            if (at == sound.length) {
                sound = Sound.joined(List.of(voice.say(lines.removeFirst()), Noise.room(0.5, random)));
                at = 0;
            }
            int samples = Math.min(BLOCK, sound.length - at);
            AudioBlock block = new AudioBlock(
                    StreamTime.ofSamples(given, Sound.RATE), Sound.RATE, Sound.part(sound, at, at + samples));
            at += samples;
            given += samples;
            if (block.end().seconds() >= nextPrint) {
                System.out.printf(Locale.ROOT, "%3.0f min: %d MB%n", nextPrint / 60, residentMegabytes());
                nextPrint += PRINTED_EVERY;
            }
            return new AudioRead.Samples(block);
        }

        @Override
        public void close() {
            lines.clear();
        }
    }
}
