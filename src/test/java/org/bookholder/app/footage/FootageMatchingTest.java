package org.bookholder.app.footage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.environment.Interruption;
import org.bookholder.journal.FootageNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FootageMatchingTest {
    @TempDir
    private Path folder;

    @Test
    void reportsEachFileThatCannotBeMatchedAndContinues() throws ProblemException, IOException {
        Path session = folder.resolve("session");
        StoredExamples.write(session, "lesson.md");
        Path letter = Files.writeString(folder.resolve("letter.mov"), "Dear aunt");
        Path none = folder.resolve("none.mov");
        List<FileMatch> told = new ArrayList<>();
        List<FileMatch> matches = new FootageMatching(StoredExamples.here(folder), progress -> {}, Interruption.NONE)
                .match(session, List.of(none, letter), told::add);
        assertThat(matches).isEqualTo(told).extracting(FileMatch::file).containsExactly(none, letter);
        assertThat(matches)
                .allMatch(match -> match.placed().isEmpty() && match.problem().isPresent());
        assertThat(FootageNotes.read(session)).isEmpty();
    }
}
