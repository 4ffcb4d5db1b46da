package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.files.DiskRoom;
import org.bookholder.files.PrivateFiles;
import org.bookholder.files.RunFolder;
import org.bookholder.problem.ProblemException;

/**
 * Tells the libraries that bring native code where to unpack it: into a private folder of this run, which is deleted at the
 * end. By themselves they would take the shared temporary folder, most of them under names that others can foresee. FFmpeg's is
 * large and stays from run to run, in a private folder of the user's.
 *
 * <p>Must be called before a class of theirs is loaded.
 */
final class NativeFolders {
    /** What one run unpacks, with room to spare. Bytes. */
    private static final long ROOM = 48L << 20;

    private static final Path MOUNTS = Path.of("/proc/self/mounts");

    private NativeFolders() {}

    /**
     * Creates this run's folder in the user's cache or, failing that, in the temporary folder, and sets the libraries'
     * properties.
     *
     * @throws ProblemException if neither has room and lets programs run
     */
    static RunFolder prepare(Path cache, Path temporary) throws ProblemException {
        List<String> reasons = new ArrayList<>();
        for (Path parent : List.of(cache, temporary)) {
            try {
                PrivateFiles.createFolder(parent);
                String reason = unfit(parent);
                if (reason.isEmpty()) {
                    RunFolder run = RunFolder.create(parent);
                    run.deleteLeftOver(temporary);
                    set(
                            run.path(),
                            parent.equals(cache) ? PrivateFiles.createFolder(cache.resolve("ffmpeg")) : run.path());
                    return run;
                }
                reasons.add(parent + " " + reason);
            } catch (IOException e) {
                reasons.add(parent + " cannot be written to");
            }
        }
        throw new ProblemException(
                "the program's own libraries cannot be unpacked: " + String.join(", and ", reasons),
                temporary.toString(),
                "free some space, or set XDG_CACHE_HOME to a folder with room from which programs may run");
    }

    private static void set(Path run, Path ffmpeg) {
        System.setProperty("org.lwjgl.system.SharedLibraryExtractPath", run.toString());
        System.setProperty("jna.tmpdir", run.toString());
        System.setProperty("jna.nosys", "true");
        System.setProperty("org.sqlite.tmpdir", run.toString());
        System.setProperty("org.bytedeco.javacpp.cachedir", ffmpeg.toString());
    }

    /** Why a folder cannot hold native libraries; empty if it can. */
    private static String unfit(Path folder) throws IOException {
        if (refusesPrograms(folder.toRealPath())) {
            return "does not let programs run (it is mounted noexec)";
        }
        return DiskRoom.free(folder) < ROOM ? "has no room (48 MB are needed)" : "";
    }

    /** Whether the file system with this folder is mounted noexec; can be told on Linux only. */
    private static boolean refusesPrograms(Path folder) throws IOException {
        if (!Files.isReadable(MOUNTS)) {
            return false;
        }
        int longest = -1;
        boolean refuses = false;
        for (String line : Files.readAllLines(MOUNTS)) {
            String[] fields = line.split(" ", 5);
            // Blanks in names are written as their numbers.
            String place = fields[1].replace("\\040", " ");
            if (folder.startsWith(place) && place.length() >= longest) {
                longest = place.length();
                refuses = List.of(fields[3].split(",", -1)).contains("noexec");
            }
        }
        return refuses;
    }
}
