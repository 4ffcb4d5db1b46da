package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.sound.SoundCheckRequest;
import org.bookholder.app.sound.SoundCheckService;
import org.bookholder.problem.ProblemException;
import org.bookholder.sound.SoundCheck;
import org.bookholder.sound.SoundFinding;
import org.bookholder.sound.SoundFinding.Grade;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.testing.Folders;
import org.bookholder.testing.Stereo;
import org.bookholder.testing.StoredExamples;
import org.bookholder.testing.UntoldSoundCheck;
import org.bookholder.testing.Wav;

/**
 * Plants faults of room, microphone and cable in voices, lets the sound check hear them, and counts what is found, missed and false
 * (docs/checks.md). The voices are WAV files of 16 kHz that are named, or the demo's reading; each gives pieces of twelve seconds.
 */
public final class SoundCheckFaults {
    private static final int VOICE_RATE = 16_000;
    private static final int ROOM_SECONDS = 5;
    private static final int VOICE_SECONDS = 12;
    private static final int MOST_PIECES = 3;

    private final Path folder;

    SoundCheckFaults(Path folder) {
        this.folder = folder;
    }

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        List<Path> files = Recordings.namedOrDemo(args);
        Path folder = Files.createTempDirectory("bookholder-checked");
        try {
            SoundCheckFaults bench = new SoundCheckFaults(folder);
            List<float[]> pieces = new ArrayList<>();
            for (Path file : files) {
                pieces.addAll(pieces(file));
            }
            for (CheckedFault fault : CheckedFault.values()) {
                bench.row(fault, pieces);
            }
        } finally {
            Folders.delete(folder);
        }
    }

    private void row(CheckedFault fault, List<float[]> pieces) throws ProblemException {
        int found = 0;
        int falsely = 0;
        List<String> said = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            SoundCheck check = check(fault, pieces.get(i));
            found += fault.found(check) ? 1 : 0;
            List<SoundFinding> wrong = wrong(check);
            falsely += fault.clean() && !wrong.isEmpty() ? 1 : 0;
            if (fault.clean() ? !wrong.isEmpty() : !fault.found(check)) {
                said.add(String.format(
                        Locale.ROOT,
                        "%d %s %.2f s",
                        i,
                        wrong,
                        check.path().echo().orElse(Double.NaN)));
            }
        }
        System.out.printf(
                Locale.ROOT, "%-20s of %2d found %2d false %2d %s%n", fault, pieces.size(), found, falsely, said);
    }

    /** The findings that are not good. */
    static List<SoundFinding> wrong(SoundCheck check) {
        return check.findings().stream().filter(f -> f.grade() != Grade.GOOD).toList();
    }

    /** Up to three pieces of a voice, after a quiet room, peaking at -9 dBFS. */
    static List<float[]> pieces(Path file) throws ProblemException {
        short[] voice = voice(file);
        List<float[]> pieces = new ArrayList<>();
        for (int piece = 0; piece < MOST_PIECES && (piece + 1) * VOICE_SECONDS * VOICE_RATE <= voice.length; piece++) {
            pieces.add(roomAndVoice(Arrays.copyOfRange(
                    voice, piece * VOICE_SECONDS * VOICE_RATE, (piece + 1) * VOICE_SECONDS * VOICE_RATE)));
        }
        return pieces;
    }

    private static short[] voice(Path file) throws ProblemException {
        try (WavSource source = WavSource.open(file)) {
            if (source.rate() != VOICE_RATE) {
                throw new IllegalArgumentException(file + " must have " + VOICE_RATE + " samples a second");
            }
        }
        return Wav.samples(file);
    }

    /**
     * The voice at 48 kHz with a quiet room before it and under it. What a recording of 16 kHz lacks above 8 kHz is filled in by folding the
     * spectrum up, 15 dB softer (Makhoul and Berouti 1979).
     */
    private static float[] roomAndVoice(short[] voice) {
        int rate = PlantedFaults.RATE;
        int from = ROOM_SECONDS * rate;
        float[] sound = new float[from + 3 * voice.length];
        double highest = 0;
        for (short sample : voice) {
            highest = Math.max(highest, Math.abs(sample));
        }
        double[] taps = taps();
        for (int i = 0; i < 3 * voice.length; i++) {
            double low = 0;
            double all = 0;
            for (int tap = 0; tap < taps.length; tap++) {
                int at = i + tap - taps.length / 2;
                if (at % 3 == 0 && at >= 0 && at / 3 < voice.length) {
                    low += taps[tap] * voice[at / 3];
                    all += tap == taps.length / 2 ? voice[at / 3] : 0;
                }
            }
            sound[from + i] = (float) (0.355 / highest * (low + 0.18 * (all - low)));
        }
        Random random = new Random(3);
        for (int i = 0; i < sound.length; i++) {
            sound[i] += (float) (0.0003 * random.nextGaussian());
        }
        return sound;
    }

    /** A low-pass at a third of half of the rate, a sinc under a Hann window; its sum is 1 for every third sample. */
    private static double[] taps() {
        double[] taps = new double[97];
        for (int i = 0; i < taps.length; i++) {
            double x = (i - 48) / 3.0;
            taps[i] = (x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x))
                    * (0.5 + 0.5 * Math.cos(Math.PI * (i - 48) / 49));
        }
        return taps;
    }

    /** What the sound check says of it, through the service. */
    SoundCheck check(CheckedFault fault, float[] roomAndVoice) throws ProblemException {
        return check(fault.plant(roomAndVoice, ROOM_SECONDS * PlantedFaults.RATE));
    }

    /** The same of a voice in a made room. */
    SoundCheck check(MadeRoom room, float[] roomAndVoice) throws ProblemException {
        CheckedFault.Sound sound = new CheckedFault.Sound(roomAndVoice.clone(), ROOM_SECONDS * PlantedFaults.RATE);
        sound.echoes(room);
        return check(sound.channels());
    }

    private SoundCheck check(List<float[]> channels) throws ProblemException {
        Path file = channels.size() == 1
                ? Wav.write(folder.resolve("check.wav"), PlantedFaults.RATE, shorts(channels.get(0)))
                : Stereo.write(
                        folder.resolve("check.wav"),
                        PlantedFaults.RATE,
                        shorts(channels.get(0)),
                        shorts(channels.get(1)));
        return new SoundCheckService(StoredExamples.here(folder), new UntoldSoundCheck(), Interruption.NONE)
                .check(new SoundCheckRequest(
                        ROOM_SECONDS, VOICE_SECONDS, Optional.empty(), Optional.empty(), Optional.of(file)));
    }

    private static short[] shorts(float[] samples) {
        short[] shorts = new short[samples.length];
        for (int i = 0; i < shorts.length; i++) {
            shorts[i] = (short) Math.max(-32_768, Math.min(32_767, Math.round(32_768 * samples[i])));
        }
        return shorts;
    }
}
