package org.bookholder.files;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import org.bookholder.problem.ProblemException;

/** Turns file system errors into problems that people understand. */
public final class DiskProblems {
    private DiskProblems() {}

    /** The problem after a failed write to {@code file}. */
    public static ProblemException writing(Path file, IOException cause) {
        String reason = reason(cause);
        String lower = reason.toLowerCase(Locale.ROOT);
        // The JDK passes on the operating system's message; it has no exception of its own for a full disk.
        if (lower.contains("quota")) {
            return new ProblemException(
                    "your quota on this disk is used up",
                    file.toString(),
                    "free some space, or choose a folder on another disk",
                    cause);
        }
        if (lower.contains("no space left") || lower.contains("not enough space")) {
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
                "check the disk, or choose a folder on another one",
                cause);
    }

    /** The problem after a failed read of {@code file}. */
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
        // The message of a FileSystemException repeats the path, which the problem already names.
        String reason = cause instanceof FileSystemException e ? e.getReason() : cause.getMessage();
        return reason == null || reason.isEmpty() ? cause.getClass().getSimpleName() : reason;
    }
}
