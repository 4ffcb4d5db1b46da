package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Outcome;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.journal.TakeAudio;
import org.bookholder.journal.TakeRecording;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.recovery.SessionRecovery;
import org.bookholder.session.LineNotes;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.testing.ChildJvm;
import org.bookholder.timing.StreamTime;

/**
 * A very long lesson, read by the program as fast as it can, which is killed in the middle; then the session is listened to again
 * and goes on to its end. Prints the program's memory meanwhile, and what is in the notes and on the recordings. Needs Linux and
 * the Debian package flite.
 *
 * <p>Argument: minutes of sound (default 180).
 */
public final class SoakWithKill {
    private static final double PRINTED_EVERY = 600;
    private static final long LOOK_MILLIS = 500;

    private final Path folder;
    private final Path script;
    private final Path sound;
    private final Path session;

    private SoakWithKill(Path folder) {
        this.folder = folder;
        script = folder.resolve("lesson.md");
        sound = folder.resolve("lesson.wav");
        session = folder.resolve("session");
    }

    /** Reads, kills, reads on and prints. */
    public static void main(String[] args) throws IOException, InterruptedException, ProblemException {
        int minutes = args.length > 0 ? Integer.parseInt(args[0]) : 180;
        SoakWithKill soak = new SoakWithKill(Files.createTempDirectory("soak"));
        int lines = soak.say(60.0 * minutes);
        long half = Files.size(soak.sound) / 2;
        try (ChildJvm child = KilledReading.start(soak.script, soak.sound, soak.session)) {
            soak.watch(child, 1, half);
            child.kill();
        }
        long recorded = soak.recorded(1);
        long before = soak.clean();
        try (VoskEars ears = VoskEars.load(KilledReading.MODEL);
                SessionFolder open = SessionFolder.open(soak.session, new SessionLocks())) {
            List<String> troubles =
                    SessionRecovery.settle(open, ears, FatigueLimits.defaults(), (take, heard, length) -> {});
            System.out.printf(
                    Locale.ROOT,
                    "killed after %.1f min: %d lines clean then, %d after listening again %s%n",
                    recorded / 60.0 / Sound.RATE,
                    before,
                    soak.clean(),
                    troubles);
        }
        Path rest = soak.rest(recorded);
        try (ChildJvm child = KilledReading.start(soak.script, rest, soak.session)) {
            soak.watch(child, 2, Long.MAX_VALUE);
        }
        System.out.printf(
                Locale.ROOT,
                "%d lines of %d are clean; %d samples were said, %d are recorded, %s%n",
                soak.clean(),
                lines,
                (Files.size(soak.sound) - 44) / 2,
                recorded + soak.recorded(2),
                soak.isWhole(recorded) ? "each as it was said" : "NOT as they were said");
    }

    /** Writes the script and its reading; returns the number of lines. */
    private int say(double seconds) throws ProblemException, IOException {
        WorkshopTalk talk = new WorkshopTalk(new Random(1));
        Flite voice = new Flite("rms", 1.0);
        Random random = new Random(2);
        List<String> lines = new ArrayList<>();
        long samples = 0;
        try (TakeRecording out = TakeRecording.create(sound, Sound.RATE, StreamTime.ZERO)) {
            while (samples < seconds * Sound.RATE) {
                String line = talk.line();
                lines.add(line);
                short[] said = Sound.joined(List.of(voice.say(line), Noise.room(0.5, random)));
                out.append(new AudioBlock(StreamTime.ofSamples(samples, Sound.RATE), Sound.RATE, said));
                samples += said.length;
            }
        }
        Files.writeString(script, "---\nlines: as-written\n---\n" + String.join("\n", lines) + "\n");
        return lines.size();
    }

    /** Until the program ends or a take's file is as long; its output is read on meanwhile, or it would wait. */
    private void watch(ChildJvm child, int take, long length) throws IOException, InterruptedException {
        double next = PRINTED_EVERY;
        Path file = session.resolve(String.format(Locale.ROOT, "take-%03d.wav", take));
        while (file.toFile().length() < length && !child.endsWithin(LOOK_MILLIS)) {
            child.skipOutput();
            double minutes = file.toFile().length() / 2.0 / Sound.RATE / 60;
            if (minutes * 60 >= next) {
                System.out.printf(Locale.ROOT, "take %d, %3.0f min: %d MB%n", take, minutes, child.residentMegabytes());
                next += PRINTED_EVERY;
            }
        }
    }

    private long recorded(int take) {
        return Math.max(0, session.resolve("take-00" + take + ".wav").toFile().length() - 44) / 2;
    }

    private Path rest(long recorded) throws IOException, ProblemException {
        Path rest = folder.resolve("rest.wav");
        try (TakeAudio all = TakeAudio.open(sound, StreamTime.ZERO);
                TakeRecording out = TakeRecording.create(rest, Sound.RATE, StreamTime.ZERO)) {
            long at = recorded;
            while (at < (Files.size(sound) - 44) / 2) {
                short[] samples = all.readFrom(at, Sound.RATE).orElseThrow().samples();
                out.append(new AudioBlock(StreamTime.ofSamples(at - recorded, Sound.RATE), Sound.RATE, samples));
                at += samples.length;
            }
        }
        return rest;
    }

    private boolean isWhole(long recorded) throws IOException, ProblemException {
        long at = 0;
        try (TakeAudio all = TakeAudio.open(sound, StreamTime.ZERO);
                TakeAudio first = TakeAudio.open(session.resolve("take-001.wav"), StreamTime.ZERO);
                TakeAudio second = TakeAudio.open(session.resolve("take-002.wav"), StreamTime.ZERO)) {
            for (TakeAudio take : List.of(first, second)) {
                long beginning = at;
                for (var block = take.readFrom(0, Sound.RATE); block.isPresent(); ) {
                    short[] samples = block.get().samples();
                    short[] said =
                            all.readFrom(at, samples.length).orElseThrow().samples();
                    if (!Arrays.equals(samples, said)) {
                        return false;
                    }
                    at += samples.length;
                    block = take.readFrom(at - beginning, Sound.RATE);
                }
            }
        }
        return at == (Files.size(sound) - 44) / 2 && recorded > 0;
    }

    private long clean() throws ProblemException {
        try (SessionFolder open = SessionFolder.openForReading(session)) {
            return KilledReading.state(open.events()).lines().all().stream()
                    .map(LineNotes::outcome)
                    .filter(outcome -> outcome == Outcome.CLEAN)
                    .count();
        }
    }
}
