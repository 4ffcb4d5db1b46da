package org.bookholder.film;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.film.program.FfmpegRun;
import org.bookholder.footage.ffmpeg.FfmpegProgram;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.CompletionLatch;

/** Takes a single picture out of a camera's file. */
public final class FilmStill {
    private static final int LOOK_MILLIS = 20;

    /** A camera's file on a slow disk may take seconds; longer than this nobody waits for a picture. */
    private static final int MOST_LOOKS = 1000;

    private static final String LOG = "still.log";

    private FilmStill() {}

    /**
     * Makes a JPEG of 640 pixels' width, unless it is there. Waits until it is made.
     *
     * @param camera the camera's file
     * @param seconds the moment, from the file's beginning
     * @param still the picture's file
     * @throws ProblemException if it cannot be made
     */
    public static void make(Path camera, double seconds, Path still) throws ProblemException {
        if (Files.isRegularFile(still)) {
            return;
        }
        try {
            PrivateFiles.createFolderFor(still);
            Path folder = Objects.requireNonNull(still.toAbsolutePath().getParent());
            Path draft = still.resolveSibling(still.getFileName() + ".part.jpg");
            Files.deleteIfExists(draft);
            List<String> arguments = new ArrayList<>(List.of("-ss", String.format(Locale.ROOT, "%.3f", seconds)));
            arguments.addAll(FfmpegProgram.input(camera));
            arguments.addAll(List.of(
                    "-an",
                    "-sn",
                    "-dn",
                    "-frames:v",
                    "1",
                    "-vf",
                    "scale=640:-2",
                    "-q:v",
                    "3",
                    "-f",
                    "image2",
                    "-update",
                    "1",
                    String.valueOf(draft.getFileName())));
            try (FfmpegRun run = FfmpegRun.start("a picture of " + camera.getFileName(), arguments, folder, LOG)) {
                for (int looks = 0; run.runs(); looks++) {
                    if (looks > MOST_LOOKS) {
                        throw new ProblemException(
                                "the picture takes too long", camera.toString(), "see whether its disk answers");
                    }
                    new CompletionLatch().await(LOOK_MILLIS);
                }
                run.check();
            }
            if (!Files.isRegularFile(draft)) {
                throw new ProblemException(
                        "there is no picture at that moment", camera.toString(), "play it to see whether it is whole");
            }
            byte[] picture = Files.readAllBytes(draft);
            new AtomicFiles(Access.OWNER).writeAll(Map.of(still, out -> out.write(picture)));
            Files.deleteIfExists(draft);
            Files.deleteIfExists(folder.resolve(LOG));
        } catch (IOException e) {
            throw DiskProblems.writing(still, e);
        }
    }
}
