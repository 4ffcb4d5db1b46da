package org.bookholder.app.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FileFinderTest {
    @TempDir
    private Path folder;

    @Test
    void findsTheFileOfThatNameAndSizeInTheLikeliestPlaceFirst() throws Exception {
        Path course = folder.resolve("home/course");
        Path old = write("home/a/film.mp4", "1234567");
        Path export = write("home/course/exports/film.mp4", "12345");

        assertThat(FileFinder.USUAL.find("film.mp4", 5, List.of(course, folder.resolve("home"))))
                .isEqualTo(export);
        assertThat(FileFinder.USUAL.find("film.mp4", 7, List.of(course, folder.resolve("home"))))
                .isEqualTo(old);
    }

    @Test
    void hiddenFilesAndLinksAndFilesOfAnotherSizeAreNotFound() throws IOException {
        write("home/.secret/film.mp4", "12345");
        Path outside = write("outside/film.mp4", "12345");
        Files.createSymbolicLink(
                Files.createDirectories(folder.resolve("home/b")).resolve("film.mp4"), outside);
        Files.createSymbolicLink(folder.resolve("home/c"), outside.getParent());
        write("home/a/film.mp4", "123");

        assertThatThrownBy(() -> FileFinder.USUAL.find("film.mp4", 5, List.of(folder.resolve("home"))))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("choose it by the button");
    }

    @Test
    void noMoreFoldersThanThatAreLookedThrough() throws Exception {
        Path film = write("home/a/b/c/film.mp4", "12345");
        assertThat(new FileFinder(4).find("film.mp4", 5, List.of(folder.resolve("home"))))
                .isEqualTo(film);
        assertThatThrownBy(() -> new FileFinder(3).find("film.mp4", 5, List.of(folder.resolve("home"))))
                .isInstanceOf(ProblemException.class);
    }

    private Path write(String path, String content) throws IOException {
        Path file = folder.resolve(path);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, content);
    }
}
