package org.bookholder.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ExportChecksTest {
    private static final Instant MADE = Instant.parse("2027-03-01T10:00:00Z");
    private static final Instant CHECKED = Instant.parse("2027-03-01T11:00:00.123Z");

    @TempDir
    private Path folder;

    @Test
    void readsBackWhatWasKept() throws ProblemException {
        Path export = new CourseFolder(folder).export("hub.mp4", MADE);
        ExportCheck kept = ExportChecks.keep(folder, export, CHECKED, List.of("black from 12 s to 15 s"));

        assertThat(ExportChecks.read(folder, export)).contains(kept);
        assertThat(kept).isEqualTo(new ExportCheck("hub.mp4", 4, MADE, CHECKED, List.of("black from 12 s to 15 s")));
        assertThat(kept.passed()).isFalse();
        assertThat(ExportChecks.keep(folder, export, CHECKED, List.of()).passed())
                .isTrue();
    }

    @Test
    void aFileThatWasNeverCheckedHasNone() throws ProblemException {
        Path export = new CourseFolder(folder).export("hub.mp4", MADE);
        assertThat(ExportChecks.read(folder, export)).isEmpty();
        assertThat(ExportChecks.read(folder, folder.resolve("exports/rim.mp4"))).isEmpty();
    }

    @Test
    void aNewExportIsUnchecked() throws ProblemException, IOException {
        Path export = new CourseFolder(folder).export("hub.mp4", MADE);
        ExportChecks.keep(folder, export, CHECKED, List.of());

        Files.setLastModifiedTime(export, FileTime.from(MADE.plusSeconds(1)));
        assertThat(ExportChecks.read(folder, export)).isEmpty();

        Files.writeString(export, "another film");
        Files.setLastModifiedTime(export, FileTime.from(MADE));
        assertThat(ExportChecks.read(folder, export)).isEmpty();
    }

    @Test
    void aDamagedFileIsReported() {
        CourseFolder course = new CourseFolder(folder);
        Path export = course.export("hub.mp4", MADE);
        course.file("checks/hub.mp4.json", "{");
        assertThatThrownBy(() -> ExportChecks.read(folder, export))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("hub.mp4.json: this note of a check cannot be understood; delete it and check");
    }
}
