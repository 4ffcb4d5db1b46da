package org.bookholder.bench;

import static org.bookholder.testing.Readings.s;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.film.FilmMaker;
import org.bookholder.film.FilmOrder;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.format.FormatChooser;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.Heard;
import org.bookholder.film.plan.Shot;
import org.bookholder.film.plan.Track;
import org.bookholder.footage.PictureFacts;
import org.bookholder.footage.ffmpeg.FfmpegProgram;
import org.bookholder.footage.ffmpeg.PictureFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Folders;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.FrameRate;

/**
 * Measures how long a film takes to make, beside FFmpeg's own program that decodes and encodes as many pictures in one go, and
 * beside the film's own length; and the most memory that the program and the FFmpeg programs it starts hold together, looked at
 * five times a second. The camera's files, at 25 pictures a second: a minute of 1080p at 12 Mb/s, a minute of 2160p at 40 Mb/s,
 * two hours of 1080p at 1 Mb/s. Needs FFmpeg and some 2 GB below the temporary folder.
 */
public final class FilmTime {
    private static final int CLIPS = 16;
    private static final int FRAMES = 62;
    private static final FrameRate RATE = FrameRate.FPS_25;

    private FilmTime() {}

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        Path folder = Files.createTempDirectory("bookholder-film");
        try {
            measure(folder, "1080p", recorded(folder, "1080.mp4", "1920x1080", ",noise=alls=6:allf=t", "12M"), 90);
            measure(folder, "2160p", recorded(folder, "2160.mp4", "3840x2160", ",noise=alls=6:allf=t", "40M"), 90);
            Path minute = recorded(folder, "minute.mp4", "1920x1080", "", "1M");
            Path hours = folder.resolve("hours.mp4");
            run(command("ffmpeg -v error -stream_loop 119 -i " + minute + " -c copy", hours));
            measure(folder, "two hours of 1080p", hours, 11_000);
        } finally {
            Folders.delete(folder);
        }
    }

    /** A minute of a camera's file. */
    private static Path recorded(Path folder, String name, String size, String noise, String rate) {
        Path camera = folder.resolve(name);
        run(command(
                "ffmpeg -v error -f lavfi -i testsrc2=size=" + size + ":rate=25" + noise
                        + " -f lavfi -i sine=300 -t 60 -c:v libx264 -preset ultrafast -b:v " + rate + " -g 50 -c:a aac",
                camera));
        return camera;
    }

    /** @param step pictures of the camera's file from the beginning of one clip to that of the next */
    private static void measure(Path folder, String name, Path camera, int step) throws ProblemException {
        double length = RATE.length((long) CLIPS * FRAMES).seconds();
        for (boolean draft : new boolean[] {false, true}) {
            FilmFormat format = draft
                    ? FormatChooser.draft(ProfileForm.usual(), RATE)
                    : FormatChooser.of(ProfileForm.usual(), List.of(PictureFile.look(camera)), RATE, s(length), false)
                            .format();
            double plain = plain(camera, folder, format, draft);
            double own;
            long most;
            try (PeakMemory memory = new PeakMemory()) {
                own = own(camera, step, folder, format, draft);
                most = memory.most();
            }
            System.out.printf(
                    Locale.ROOT,
                    "from %s, %s of %dx%d, %.0f s: %.1f s, %.2f of FFmpeg's own program, %.2f of the film; %d MB%n",
                    name,
                    draft ? "draft" : "film",
                    format.width(),
                    format.height(),
                    length,
                    own,
                    own / plain,
                    own / length,
                    most / 1_000_000);
        }
    }

    private static double plain(Path camera, Path folder, FilmFormat format, boolean draft) throws ProblemException {
        String scale = "scale=" + format.width() + ":" + format.height() + ":flags=" + (draft ? "bilinear" : "lanczos");
        Path out = folder.resolve(draft ? "plain-draft.mp4" : "plain.mp4");
        long begun = System.nanoTime();
        run(command(
                FfmpegProgram.path() + " -v error -y -i " + camera + " -frames:v " + CLIPS * FRAMES + " -vf " + scale
                        + " "
                        + String.join(" ", format.picture().arguments()) + " -b:v " + format.pictureKbps()
                        + "k -c:a aac -shortest",
                out));
        return (System.nanoTime() - begun) / 1e9;
    }

    private static double own(Path camera, int step, Path folder, FilmFormat format, boolean draft)
            throws ProblemException {
        PictureFacts facts = PictureFile.look(camera);
        List<FilmClip> clips = new ArrayList<>();
        for (int i = 0; i < CLIPS; i++) {
            long first = (long) i * step + 7;
            clips.add(new FilmClip(
                    1,
                    1,
                    0,
                    1,
                    s(first / 25.0),
                    s((first + FRAMES) / 25.0),
                    (long) i * FRAMES,
                    FRAMES,
                    Optional.of(new Shot(camera, facts, true, first, 100)),
                    Optional.of(new Heard(camera, Track.Kind.CAMERA, Optional.empty(), RATE.ticksAt(first), 1)),
                    List.of()));
        }
        FilmOrder order = new FilmOrder(
                new FilmPlan(RATE, clips),
                format,
                Scripts.of("A line."),
                draft,
                folder.resolve(draft ? "draft.mp4" : "film.mp4"),
                Optional.empty());
        int atOnce = Math.max(1, Math.min(4, Runtime.getRuntime().availableProcessors()));
        long begun = System.nanoTime();
        new FilmMaker(order, Optional.empty(), atOnce, part -> {}).make();
        return (System.nanoTime() - begun) / 1e9;
    }

    private static void run(String[] command) {
        Decoder.output(command[0], Arrays.copyOfRange(command, 1, command.length));
    }

    private static String[] command(String words, Path out) {
        List<String> command = new ArrayList<>(List.of(words.split(" ", -1)));
        command.add(out.toString());
        return command.toArray(String[]::new);
    }
}
