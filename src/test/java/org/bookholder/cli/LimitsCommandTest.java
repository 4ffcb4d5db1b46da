package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.Spoken;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When a break is advised, as the user has set it. */
final class LimitsCommandTest {
    private static final Spoken VOICE =
            new Spoken(0.5).says("every wheel begins with its hub").pauses(120);

    @TempDir
    private Path folder;

    private Program program;

    @BeforeEach
    void equip() throws IOException {
        program = new Program(folder);
        program.equipment.hears(new FakeEars(VOICE.hypotheses()));
        Files.createDirectory(folder.resolve("settings"));
    }

    @Test
    void limitsAreShownInTheFormInWhichTheyAreSet() {
        assertThat(program.run("limits")).isZero();
        assertThat(program.out())
                .contains("voice: 25, 35, 45 ", "save these lines as " + program.path("settings/limits.txt"));
        assertThat(program.out()).contains("Titze, Svec and Popolo 2003", "common practice", "eyes", "clinician");
        program.file("settings/limits.txt", program.out().replace("25, 35, 45", "1, 2, 3"));
        assertThat(program.run("limits")).isZero();
        assertThat(program.out()).contains("voice: 1, 2, 3 ", "screen: 50, 60, 75 ");
    }

    @Test
    void limitsApplyToAReadingAndItsNotes() {
        assertThat(read()).isZero();
        assertThat(program.out()).doesNotContain("voice rest");
        program.file("settings/limits.txt", "voice: 1, 1, 1\n");
        assertThat(program.run("notes", program.path("session"))).isZero();
        assertThat(program.out()).contains("Reading for 2 min without a break; voice rest was advised at 1 min.");
    }

    @Test
    void aWrongLineIsNamedOnceAndTheRestIsKept() {
        program.file("settings/limits.txt", "screen: soon\nvoice: 1, 1, 1\n");
        String warning = "bookholder: " + program.path("settings/limits.txt")
                + ":1: screen 'soon' is not a whole number; give 1 to 1440 minutes (this line is left out)\n";
        assertThat(read()).isZero();
        assertThat(program.err()).isEqualTo(warning);
        assertThat(program.out()).contains("voice rest");
        assertThat(program.run("limits")).isZero();
        assertThat(program.err()).isEqualTo(warning);
        assertThat(program.out()).contains("voice: 1, 1, 1 ", "screen: 50, 60, 75 ");
    }

    @Test
    void unreadableLimitsAreReportedBeforeASessionBegins() throws IOException {
        Files.createDirectory(folder.resolve("settings/limits.txt"));
        assertThat(read()).isEqualTo(2);
        assertThat(program.err()).contains("the limits cannot be read").hasLineCount(1);
        assertThat(folder.resolve("session")).doesNotExist();
    }

    private int read() {
        return program.read(
                program.file("wheel.md", "Every wheel begins with its hub.\nCount the spokes.\n"),
                program.recording("wheel.wav", VOICE.seconds()),
                program.path("session"));
    }
}
