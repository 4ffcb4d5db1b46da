package org.bookholder.files;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import org.bookholder.problem.ProblemException;

/** Tells a person what a disk refused. */
public final class DiskProblems {
    private DiskProblems() {}

    /** What to tell after writing to {@code file} failed. */
    public static ProblemException writing(Path file, IOException cause) {
        String reason = reason(cause);
        String lower = reason.toLowerCase(Locale.ROOT);
        // The JDK passes the operating system's own words on; there is no code for a full disk.
        if (lower.contains("no space left") || lower.contains("not enough space") || lower.contains("quota")) {
            return new ProblemException(
                    "the disk is full", file.toString(), "free some space, or choose a folder on another disk", cause);
        }
        if (cause instanceof AccessDeniedException || lower.contains("denied") || lower.contains("read-only")) {
            return new ProblemException(
                    "cannot be written (" + reason + ")",
                    file.toString(),
                    "allow writing there, or choose another folder",
                    cause);
        }
        return new ProblemException(
                "cannot be written (" + reason + ")",
                file.toString(),
                "look after the disk, or choose a folder on another one",
                cause);
    }

    /** What to tell after reading {@code file} failed. */
    public static ProblemException reading(Path file, IOException cause) {
        return new ProblemException(
                "cannot be read (" + reason(cause) + ")",
                file.toString(),
                "check that it is there and that you may read it",
                cause);
    }

    private static String reason(IOException cause) {
        if (cause instanceof NoSuchFileException) {
            return "no such file or folder";
        }
        if (cause instanceof AccessDeniedException) {
            return "access denied";
        }
        if (cause instanceof FileAlreadyExistsException e) {
            return e.getFile() + " is in the way";
        }
        // The message of a file system's exception repeats the path, which the problem names already.
        String reason = cause instanceof FileSystemException e ? e.getReason() : cause.getMessage();
        return reason == null || reason.isEmpty() ? cause.getClass().getSimpleName() : reason;
    }
}
