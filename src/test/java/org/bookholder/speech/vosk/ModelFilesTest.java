package org.bookholder.speech.vosk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Copies of the model, each with one file that was cut short; the recogniser never sees them. */
final class ModelFilesTest {
    private static final String REMEDY = "; delete the folder and unpack the program, or the model, again";

    @TempDir
    private Path folder;

    private Path model;

    @BeforeEach
    void link() throws IOException {
        Hearing.needs();
        model = Files.createDirectory(folder.resolve("model"));
        Path original = Hearing.MODEL.toRealPath();
        for (Path file : files(original)) {
            Path place = model.resolve(original.relativize(file).toString());
            Files.createDirectories(place.getParent());
            Files.createSymbolicLink(place, file);
        }
    }

    @Test
    void theWholeModelIsTaken() throws IOException, ProblemException {
        ModelFiles.check(model);
        assertThat(files(model)).hasSizeGreaterThan(10);
    }

    @Test
    void aCutInAnyFileOfOurModelIsNamed() throws IOException, ProblemException {
        for (Path file : files(model)) {
            String name = model.relativize(file).toString();
            Path whole = file.toRealPath();
            if (!List.of("uuid", "README").contains(name)) {
                cut(file, Files.size(whole) - 1);
                assertThatThrownBy(() -> VoskEars.load(model))
                        .hasMessage(model + ": the speech model is damaged: " + name + " has " + (Files.size(whole) - 1)
                                + " bytes instead of " + Files.size(whole) + REMEDY);
                Files.delete(file);
                Files.createSymbolicLink(file, whole);
            }
        }
        ModelFiles.check(model);
    }

    @ParameterizedTest
    @CsvSource({
        "am/final.mdl, 0, is empty",
        "graph/Gr.fst, 3, is of another kind",
        "graph/HCLr.fst, 0, is empty",
        "ivector/final.ie, 4000000, breaks off",
        "ivector/final.dubm, 100, breaks off",
        "ivector/splice.conf, 0, is empty"
    })
    void aCutThatShowsInAnotherModelIsNamed(String name, int bytes, String how) throws IOException {
        Files.delete(model.resolve("uuid"));
        cut(model.resolve(name), bytes);
        assertThatThrownBy(() -> VoskEars.load(model))
                .hasMessage(model + ": the speech model is damaged: " + name + " " + how + REMEDY);
    }

    /** Puts the first bytes of a file into the place of the link to it. */
    private static void cut(Path link, long bytes) throws IOException {
        byte[] first;
        try (InputStream in = Files.newInputStream(link)) {
            first = in.readNBytes((int) bytes);
        }
        Files.delete(link);
        Files.write(link, first);
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).sorted().toList();
        }
    }
}
