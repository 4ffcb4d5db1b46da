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
import org.bookholder.delivery.FilmCheck;
import org.bookholder.delivery.Finding;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.delivery.TakeCheck;
import org.bookholder.footage.SharedSound;
import org.bookholder.footage.SharedStretch;
import org.bookholder.footage.SoundTrack;
import org.bookholder.footage.StoredTrack;
import org.bookholder.footage.ffmpeg.FootageSound;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.CheckedFilm;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.Folders;
import org.bookholder.testing.Wav;
import org.bookholder.timing.StreamTime;

/**
 * Cuts films from voices, plants faults in them, stores them as AAC, and counts what the comparison with the take finds, misses and calls
 * wrongly (docs/checks.md). The voices are files that are named, or the demo's reading. Needs FFmpeg.
 */
public final class TakeFaults {
    private static final int RATE = PlantedFaults.RATE;
    private static final int SECONDS = 40;

    /** Pieces of so many seconds, of which so much is cut out after each. */
    private static final double PIECE = 4.3;

    private static final double CUT_OUT = 0.37;
    private static final int SHOWN = 6;
    private static final int FADE = RATE * 15 / 1000;

    /** A step of the level stands at every so many cuts. */
    private static final int EVERY = 3;

    private final Path folder;

    private TakeFaults(Path folder) {
        this.folder = folder;
    }

    /** How the film's sound differs from the take's. */
    private enum Sound {
        SAME("anull", "anull"),
        TREATED(
                "anull",
                "highpass=f=80,equalizer=f=3500:t=q:w=1:g=4,acompressor=threshold=-24dB:ratio=3:attack=8:release=120:makeup=2,"
                        + "alimiter=limit=0.8:level=0"),
        /** The take was recorded far away, the film's sound near. */
        NEARER("aecho=1:0.7:11|17|23|31|41:0.4|0.35|0.3|0.25|0.2,equalizer=f=300:t=q:w=1:g=5", TREATED.film),
        /** The other way round. */
        FARTHER("anull", "aecho=1:0.7:13|19|29|37|43:0.4|0.35|0.3|0.25|0.2," + TREATED.film),
        /** The film's sound was levelled. */
        LEVELLED("anull", "dynaudnorm"),
        RAISED("anull", "speechnorm"),
        /** The reader moves away from the microphone at 18.5 s, and the edit evens that and a little more. */
        EVENED("volume='if(gte(t,18.5),0.4,1)':eval=frame", "volume='if(gte(t,18.5),1.19,1)':eval=frame");

        private final String take;
        private final String film;

        Sound(String take, String film) {
            this.take = take;
            this.film = film;
        }
    }

    /** What is planted. */
    private enum Fault {
        NONE(0, 0),
        HOLES_5(0.005, 0),
        HOLES_12(0.012, 0),
        LEVEL_3_5(0, 3.5),
        LEVEL_4(0, 4),
        LEVEL_6(0, 6);

        private final double hole;
        private final double step;

        /**
         * @param hole seconds of silence, twenty times
         * @param step by how many decibels the level changes at some cuts
         */
        Fault(double hole, double step) {
            this.hole = hole;
            this.step = step;
        }
    }

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        Path folder = Files.createTempDirectory("bookholder-take-faults");
        try {
            TakeFaults bench = new TakeFaults(folder);
            List<Path> voices = Recordings.namedOrDemo(args);
            for (Sound sound : Sound.values()) {
                for (Fault fault : Fault.values()) {
                    bench.row(voices, sound, "128k", fault);
                }
                bench.row(voices, sound, "320k", Fault.NONE);
                bench.row(voices, sound, "320k", Fault.HOLES_5);
            }
        } finally {
            Folders.delete(folder);
        }
    }

    private void row(List<Path> voices, Sound sound, String way, Fault fault) throws ProblemException {
        int planted = 0;
        int found = 0;
        double shared = 0;
        List<String> others = new ArrayList<>();
        for (int i = 0; i < voices.size(); i++) {
            float[] voice = new PlantedFaults(folder).voice(voices.get(i), SECONDS);
            Film film = film(voice, sound, fault, new Random(i));
            Checked checked = checked(film, way);
            planted += film.at().size();
            for (double at : film.at()) {
                found += checked.all().stream().anyMatch(f -> near(f, at)) ? 1 : 0;
            }
            shared += checked.shared();
            for (Finding finding : checked.byTake()) {
                if (film.at().stream().noneMatch(at -> near(finding, at))) {
                    others.add(said(i, finding));
                }
            }
        }
        System.out.printf(
                Locale.ROOT,
                "%-8s %-5s %-9s shared %.2f planted %3d found %3d other %d %s%n",
                sound,
                way,
                fault,
                shared / voices.size(),
                planted,
                found,
                others.size(),
                others.subList(0, Math.min(SHOWN, others.size())));
    }

    private static String said(int voice, Finding finding) {
        double start = finding.place().orElseThrow().start().seconds();
        return String.format(Locale.ROOT, "%d %.2f %s", voice, start, finding.what());
    }

    private static boolean near(Finding finding, double at) {
        Optional<Finding.Place> place = finding.place();
        return place.isPresent()
                && at > place.get().start().seconds() - 0.3
                && at < place.get().end().seconds() + 0.3;
    }

    /**
     * A film that was cut.
     *
     * @param take the take's file
     * @param sound the film's sound, not stored as AAC yet
     * @param pieces where each piece begins in the film and in the take, in seconds
     * @param at where its faults are, in seconds
     */
    private record Film(Path take, Path sound, List<double[]> pieces, List<Double> at) {}

    /**
     * What was found in it.
     *
     * @param all drop-outs and jumps, however they were found
     * @param byTake those that were found by comparison with the take
     * @param shared the share of it that was found in the take
     */
    private record Checked(List<Finding> all, List<Finding> byTake, double shared) {}

    private Film film(float[] voice, Sound sound, Fault fault, Random random) throws ProblemException {
        Path take = filtered(voice, sound.take, "take");
        float[] near = new PlantedFaults(folder).voice(filtered(voice, sound.film, "near"), SECONDS);
        float[] cut = new float[near.length];
        int length = (int) (PIECE * RATE);
        int filled = 0;
        double level = -fault.step;
        List<double[]> pieces = new ArrayList<>();
        List<Double> at = new ArrayList<>();
        for (int from = 0; from + length < near.length; from += (int) ((PIECE + CUT_OUT) * RATE)) {
            if (fault.step > 0 && !pieces.isEmpty() && pieces.size() % EVERY == 0) {
                level = level == 0 ? -fault.step : 0;
                at.add((double) filled / RATE);
            }
            pieces.add(new double[] {(double) filled / RATE, (double) from / RATE});
            float gain = (float) Math.pow(10, level / 20);
            for (int i = 0; i < length; i++) {
                float fade = Math.min(1, Math.min((float) i / FADE, (float) (length - i) / FADE));
                cut[filled++] = gain * fade * near[from + i];
            }
        }
        float[] film = Arrays.copyOf(cut, filled);
        if (fault.hole > 0) {
            int hole = (int) (fault.hole * RATE);
            for (int place : SoundFault.places(film, random, hole)) {
                Arrays.fill(film, place, place + hole, 0);
                at.add((place + hole / 2.0) / RATE);
            }
        }
        return new Film(take, write(film, "cut"), pieces, at);
    }

    private Checked checked(Film film, String way) throws ProblemException {
        Path stored = Ffmpeg.make(
                folder.resolve("film.m4a"), "-i", film.sound().toString(), "-ac", "2", "-c:a", "aac", "-b:a", way);
        FilmCheck.Result result = CheckedFilm.of(stored, ProfileForm.usual());
        try (StoredTrack sound = track(stored);
                StoredTrack take = track(film.take())) {
            List<SharedStretch> stretches = stretches(film, sound, take);
            List<Finding> byTake = new TakeCheck(sound, StreamTime.ZERO, stretches).of(result.suspected());
            List<Finding> all = new ArrayList<>(byTake);
            result.findings().stream().filter(f -> f.kind().equals("drop-out")).forEach(all::add);
            long shared = stretches.stream().mapToLong(SharedStretch::length).sum();
            return new Checked(all, byTake, (double) shared / sound.length());
        }
    }

    private static List<SharedStretch> stretches(Film film, SoundTrack sound, SoundTrack take) {
        SharedSound shared = new SharedSound(sound);
        Random random = new Random(3);
        List<SharedStretch> stretches = new ArrayList<>();
        for (double[] piece : film.pieces()) {
            // Bounds of lines are known to a tenth of a second or so.
            double from = piece[1] + 0.1 * random.nextGaussian();
            stretches.addAll(shared.stretches(
                    (long) (piece[0] * SoundTrack.RATE),
                    (long) ((piece[0] + PIECE) * SoundTrack.RATE),
                    List.of(new SharedSound.Candidate(take, (long) (from * SoundTrack.RATE)))));
        }
        return stretches;
    }

    private static StoredTrack track(Path file) throws ProblemException {
        try (FootageSound sound = FootageSound.open(file, SoundTrack.RATE)) {
            return StoredTrack.of(sound::read);
        }
    }

    private Path filtered(float[] voice, String chain, String name) {
        return Ffmpeg.make(
                folder.resolve(name + ".wav"), "-i", write(voice, name + "-in").toString(), "-af", chain);
    }

    private Path write(float[] voice, String name) {
        short[] samples = new short[voice.length];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (short) Math.max(-32_768, Math.min(32_767, Math.round(32_768 * voice[i])));
        }
        return Wav.write(folder.resolve(name + ".wav"), RATE, samples);
    }
}
