package org.bookholder.footage.ffmpeg;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.bookholder.problem.ProblemException;
import org.bytedeco.ffmpeg.ffmpeg;
import org.bytedeco.javacpp.Loader;

/** FFmpeg's own program, which lies beside its libraries in what this program brings along. */
public final class FfmpegProgram {
    private FfmpegProgram() {}

    /**
     * Where it lies; it is unpacked if it is not yet.
     *
     * @throws ProblemException if it cannot be unpacked, or there is none for this system
     */
    public static Path path() throws ProblemException {
        try {
            return Path.of(Loader.load(ffmpeg.class));
        } catch (UnsatisfiedLinkError e) {
            throw new ProblemException(
                    "the part of the program that makes films cannot be loaded (" + cause(e) + ")",
                    System.getProperty("org.bytedeco.javacpp.cachedir", "the cache folder"),
                    "install the system's library that is named there, on Debian libpulse0 for libpulse.so.0, or free"
                            + " some space",
                    e);
        } catch (RuntimeException e) {
            throw new ProblemException(
                    "the part of the program that makes films cannot be unpacked (" + e.getMessage() + ")",
                    System.getProperty("org.bytedeco.javacpp.cachedir", "the cache folder"),
                    "free some space there",
                    e);
        }
    }

    /**
     * What has to be set in its environment: some of the libraries that lie beside it look for others that do so only in the system's
     * folders and here.
     */
    public static Map<String, String> environment(Path program) {
        return Map.of("LD_LIBRARY_PATH", String.valueOf(program.getParent()));
    }

    /** The innermost message: the loader's own says only where it looked. */
    private static String cause(Throwable failure) {
        Throwable inner = failure;
        while (inner.getCause() != null) {
            inner = inner.getCause();
        }
        return String.valueOf(inner.getMessage());
    }

    /**
     * The arguments by which it reads a still, likewise.
     *
     * @throws ProblemException if it is none that can be read
     */
    public static List<String> still(Path file) throws ProblemException {
        return StillFile.input(file);
    }

    /** The arguments by which it reads a file of a camera's or recorder's, and nothing that such a file might point to. */
    public static List<String> input(Path file) {
        return List.of(
                "-protocol_whitelist",
                "file",
                "-format_whitelist",
                OpenFile.KINDS,
                "-i",
                "file:" + file.toAbsolutePath());
    }
}
