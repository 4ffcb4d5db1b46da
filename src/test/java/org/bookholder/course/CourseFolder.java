package org.bookholder.course;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import org.bookholder.problem.ProblemException;

/** A course's folder in the making. */
public final class CourseFolder {
    private final Path folder;

    public CourseFolder(Path folder) {
        this.folder = folder;
    }

    public Path path() {
        return folder;
    }

    /** Writes a file, with the folders above it. */
    public Path file(String name, String text) {
        try {
            Path file = folder.resolve(name);
            Files.createDirectories(file.getParent());
            return Files.writeString(file, text, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Writes a lesson's script; its title is its name. */
    public Path lesson(String name, String text) {
        return file(name + ".md", "---\ntitle: " + name + "\n---\n" + text + "\n");
    }

    /** Writes something for an exported film. */
    public Path export(String name, Instant when) {
        try {
            return Files.setLastModifiedTime(file("exports/" + name, "film"), FileTime.from(when));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public Course read() {
        try {
            return CourseReader.read(folder);
        } catch (ProblemException e) {
            throw new IllegalStateException(e);
        }
    }
}
