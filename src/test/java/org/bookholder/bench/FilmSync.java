package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.film.FilmMaker;
import org.bookholder.film.FilmOrder;
import org.bookholder.film.FilmReadBack;
import org.bookholder.film.NumberedCamera;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.format.FormatChooser;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.Heard;
import org.bookholder.film.plan.Shot;
import org.bookholder.film.plan.Track;
import org.bookholder.footage.PictureFacts;
import org.bookholder.footage.ffmpeg.PictureFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Folders;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.Wav;
import org.bookholder.timing.FrameRate;

/**
 * Makes films of ten minutes in 150 pieces from cameras whose pictures carry their numbers and whose sound is known, reads them back with
 * another FFmpeg, and counts pictures that are not the planned ones at the borders of pieces, and how far the sound is from the
 * picture at the film's beginning, middle and end. Needs a heap of 2.5 GB and as much below the temporary folder.
 */
public final class FilmSync {
    private static final int CLIPS = 150;
    private static final double CLIP_SECONDS = 4;
    private static final double LEFT_OUT_SECONDS = 0.1;
    private static final int RATE = 48_000;
    private static final double SECONDS = CLIPS * (CLIP_SECONDS + LEFT_OUT_SECONDS) + 5;

    /** One of so many pictures is missing in the file whose pictures come unevenly: the one before is on show then. */
    private static final int GAP = 7;

    /** By how much the recorder's clock gains. */
    private static final double GAIN = 1e-4;

    private final Path folder;
    private final short[] voice = voice();

    private FilmSync(Path folder) {
        this.folder = folder;
    }

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        Path folder = Files.createTempDirectory("bookholder-sync");
        try {
            FilmSync sync = new FilmSync(folder);
            sync.measure("25", "25", FrameRate.FPS_25, false, false);
            sync.measure("25, a recorder whose clock gains 100 millionths", "25", FrameRate.FPS_25, false, true);
            sync.measure("29.97", "30000/1001", FrameRate.FPS_29_97, false, false);
            sync.measure("25, every seventh picture missing", "25", FrameRate.FPS_25, true, false);
        } finally {
            Folders.delete(folder);
        }
    }

    private void measure(String name, String rate, FrameRate frames, boolean uneven, boolean recorded)
            throws ProblemException {
        List<String> how =
                new ArrayList<>(List.of("-c:v", "libx264", "-preset", "ultrafast", "-g", "50", "-c:a", "aac"));
        if (uneven) {
            how.addAll(List.of("-vf", "select=not(eq(mod(n\\," + GAP + ")\\,3))", "-fps_mode", "vfr"));
        }
        int count = (int) (SECONDS * frames.numerator() / frames.denominator());
        Path camera = NumberedCamera.make(folder.resolve("camera.mp4"), count, rate, voice, how.toArray(String[]::new));
        FilmPlan plan = plan(camera, frames, uneven, recorded ? Optional.of(gaining()) : Optional.empty());
        FilmReadBack film = FilmReadBack.of(made(plan, camera), folder);
        System.out.printf(
                Locale.ROOT,
                "%s: %d pictures, %d not as planned of %d at borders; sound late by %s samples at the beginning, %s in the middle,"
                        + " %s at the end%n",
                name,
                film.pictures(),
                wrong(film, plan, uneven),
                4 * CLIPS,
                late(film, plan, 0),
                late(film, plan, CLIPS / 2),
                late(film, plan, CLIPS - 1));
    }

    private static FilmPlan plan(Path camera, FrameRate frames, boolean uneven, Optional<Path> recorder)
            throws ProblemException {
        PictureFacts facts = PictureFile.look(camera);
        int each = (int) Math.round(CLIP_SECONDS * frames.numerator() / frames.denominator());
        int step = (int) Math.round((CLIP_SECONDS + LEFT_OUT_SECONDS) * frames.numerator() / frames.denominator());
        List<FilmClip> clips = new ArrayList<>();
        for (int i = 0; i < CLIPS; i++) {
            long first = (long) i * step + 7;
            double from = frames.ticksAt(first);
            Heard heard = recorder.map(
                            file -> new Heard(file, Track.Kind.RECORDER, Optional.empty(), from * (1 + GAIN), 1 + GAIN))
                    .orElseGet(() -> new Heard(camera, Track.Kind.CAMERA, Optional.empty(), from, 1));
            clips.add(new FilmClip(
                    1,
                    1,
                    0,
                    1,
                    frames.length(first),
                    frames.length(first + each),
                    (long) i * each,
                    each,
                    Optional.of(new Shot(camera, facts, !uneven, first, 100)),
                    Optional.of(heard),
                    List.of()));
        }
        return new FilmPlan(frames, clips);
    }

    private Path made(FilmPlan plan, Path camera) throws ProblemException {
        FilmFormat format = FormatChooser.of(
                        ProfileForm.usual(), List.of(PictureFile.look(camera)), plan.rate(), plan.length(), false)
                .format();
        FilmOrder order =
                new FilmOrder(plan, format, Scripts.of("A line."), false, folder.resolve("film.mp4"), Optional.empty());
        return new FilmMaker(order, Optional.empty(), 2, part -> {}).make().file();
    }

    /** Of the first two and the last two pictures of each piece. */
    private static int wrong(FilmReadBack film, FilmPlan plan, boolean uneven) {
        int wrong = 0;
        for (FilmClip clip : plan.clips()) {
            for (long at : new long[] {0, 1, clip.frames() - 2, clip.frames() - 1}) {
                int number = (int) (clip.shot().orElseThrow().first() + at);
                int shown = uneven && number % GAP == 3 ? number - 1 : number;
                long picture = clip.start() + at;
                wrong += film.numbers(picture, picture + 1, 1).equals(List.of(shown)) ? 0 : 1;
            }
        }
        return wrong;
    }

    /** At three places of a piece. */
    private List<Integer> late(FilmReadBack film, FilmPlan plan, int piece) {
        FilmClip clip = plan.clips().get(piece);
        int count = RATE / 10;
        long start = plan.tickOf(clip.start());
        long length = plan.tickOf(clip.end()) - start;
        double from = plan.rate().ticksAt(clip.shot().orElseThrow().first());
        List<Integer> late = new ArrayList<>();
        for (double part : new double[] {0.15, 0.5, 0.8}) {
            long inside = Math.round(part * (length - count));
            late.add(film.late(start + inside, voice, from + inside, count));
        }
        return late;
    }

    /** Noise of low frequencies, as in a voice. */
    private static short[] voice() {
        short[] voice = new short[(int) (SECONDS * RATE)];
        Random random = new Random(7);
        double smooth = 0;
        for (int i = 0; i < voice.length; i++) {
            smooth = 0.8 * smooth + 0.2 * random.nextGaussian();
            voice[i] = (short) (smooth * 6000);
        }
        return voice;
    }

    /** The file of a recorder whose clock gains: the voice comes later in it the longer it runs. */
    private Path gaining() {
        short[] file = new short[(int) (voice.length * (1 + GAIN)) - 2];
        for (int i = 0; i < file.length; i++) {
            double at = i / (1 + GAIN);
            int before = (int) at;
            int after = Math.min(voice.length - 1, before + 1);
            file[i] = (short) Math.rint(voice[before] + (at - before) * (voice[after] - voice[before]));
        }
        return Wav.write(folder.resolve("recorder.wav"), RATE, file);
    }
}
