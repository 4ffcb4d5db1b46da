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
import java.util.Set;
import org.bookholder.delivery.Finding;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.footage.ffmpeg.FootageSound;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.CheckedFilm;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.Folders;
import org.bookholder.testing.Stereo;

/**
 * Plants faults in the sound of voices, stores them as WAV and as AAC, checks them, and counts what is found, missed and false
 * (docs/checks.md). The voices are files that are named, or the demo's reading. Needs FFmpeg.
 */
public final class PlantedFaults {
    static final int RATE = 48_000;

    /** Ways to store a film's sound, as FFmpeg's program is told. */
    static final List<String> WAYS = List.of("wav", "320k", "128k");

    private static final Set<String> OF_SOUND =
            Set.of("clicks", "clipped", "drop-out", "echo", "narrow", "noise", "silent", "stereo");

    private static final int SECONDS = 90;
    private static final int SHOWN = 6;
    private static final double NEAR_SECONDS = 0.03;

    private final Path folder;

    PlantedFaults(Path folder) {
        this.folder = folder;
    }

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        List<Path> files = Recordings.namedOrDemo(args);
        Path folder = Files.createTempDirectory("bookholder-planted");
        try {
            PlantedFaults bench = new PlantedFaults(folder);
            List<float[]> voices = new ArrayList<>();
            for (Path file : files) {
                voices.add(bench.voice(file, SECONDS));
            }
            for (String way : WAYS) {
                for (SoundFault fault : SoundFault.values()) {
                    bench.row(fault, way, voices);
                }
            }
        } finally {
            Folders.delete(folder);
        }
    }

    private void row(SoundFault fault, String way, List<float[]> voices) throws ProblemException {
        int planted = 0;
        int found = 0;
        List<String> others = new ArrayList<>();
        for (int i = 0; i < voices.size(); i++) {
            SoundFault.Planted sound = fault.plant(voices.get(i), new Random(i + 1L));
            List<Finding> findings = found(sound.channels(), way);
            planted += sound.count();
            found += hits(fault, sound, findings);
            for (Finding finding : findings) {
                if (fault.kind().isEmpty()
                        || !finding.kind().equals(fault.kind().get())
                        || !at(finding, sound)) {
                    others.add(i + " " + finding.kind()
                            + finding.place()
                                    .map(p -> String.format(
                                            Locale.ROOT, " %.2f", p.start().seconds()))
                                    .orElse("")
                            + " " + finding.what());
                }
            }
        }
        System.out.printf(
                Locale.ROOT,
                "%-28s %-5s planted %3d found %3d other %d %s%n",
                fault,
                way,
                planted,
                found,
                others.size(),
                others.subList(0, Math.min(SHOWN, others.size())));
    }

    static int hits(SoundFault fault, SoundFault.Planted sound, List<Finding> findings) {
        List<Finding> right = findings.stream()
                .filter(f ->
                        fault.kind().isPresent() && f.kind().equals(fault.kind().get()))
                .toList();
        if (sound.at().isEmpty()) {
            return right.isEmpty() ? 0 : sound.count();
        }
        return (int) sound.at().stream()
                .filter(at -> right.stream().anyMatch(f -> near(f, at, 0)))
                .count();
    }

    private static boolean at(Finding finding, SoundFault.Planted sound) {
        return sound.at().isEmpty() || sound.at().stream().anyMatch(at -> near(finding, at, 6));
    }

    private static boolean near(Finding finding, double at, double slack) {
        Optional<Finding.Place> place = finding.place();
        return place.isPresent()
                && at > place.get().start().seconds() - NEAR_SECONDS - slack
                && at < place.get().end().seconds() + NEAR_SECONDS + slack;
    }

    /** What a check says of the sound, stored in this way. */
    List<Finding> found(List<float[]> channels, String way) throws ProblemException {
        short[][] samples = new short[2][channels.get(0).length];
        for (int channel = 0; channel < 2; channel++) {
            for (int i = 0; i < samples[channel].length; i++) {
                float sample = channels.get(Math.min(channel, channels.size() - 1))[i];
                samples[channel][i] = (short) Math.max(-32_768, Math.min(32_767, Math.round(32_768 * sample)));
            }
        }
        Path wav = Stereo.write(folder.resolve("planted.wav"), RATE, samples[0], samples[1]);
        Path film = way.equals("wav")
                ? wav
                : Ffmpeg.make(folder.resolve("planted.m4a"), "-i", wav.toString(), "-c:a", "aac", "-b:a", way);
        return CheckedFilm.of(film, ProfileForm.usual()).findings().stream()
                .filter(PlantedFaults::ofSound)
                .toList();
    }

    /** Not of the file's form, in which nothing is planted. */
    private static boolean ofSound(Finding finding) {
        return OF_SOUND.contains(finding.kind());
    }

    /** The first seconds of a voice, its speech at -20 dBFS and no peak above -1. */
    float[] voice(Path file, int seconds) throws ProblemException {
        float[] voice = new float[seconds * RATE];
        int filled = 0;
        try (FootageSound sound = FootageSound.open(file, RATE)) {
            Optional<short[]> piece = sound.read();
            while (piece.isPresent() && filled < voice.length) {
                for (int i = 0; i < piece.get().length && filled < voice.length; i++) {
                    voice[filled++] = piece.get()[i] / 32_768f;
                }
                piece = sound.read();
            }
        }
        voice = Arrays.copyOf(voice, filled);
        float gain = SoundFault.gainTo(voice, -20, -1);
        for (int i = 0; i < voice.length; i++) {
            voice[i] *= gain;
        }
        return voice;
    }
}
