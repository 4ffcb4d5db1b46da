package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** A full disk, simulated by a limit on the size of files. */
@Timeout(300)
@Execution(ExecutionMode.CONCURRENT)
final class FullDiskTest {
    /** More than the database driver needs to unpack itself, less than the recordings and a long journal. */
    private static final int KIBIBYTES = 1100;

    /** The notes on this many lines do not fit. */
    private static final int TOO_MANY = 2000;

    /** These fit after the database has merged its log into the file; the log itself does not fit. */
    private static final int MANY = 450;

    @TempDir
    private Path folder;

    private Program program;

    @BeforeEach
    void writeScript() {
        Needs.program("bash", "Debian package bash");
        program = new Program(folder);
        program.file("wheel.md", "Every wheel begins with its hub.\n");
    }

    /** The second place is not limited so soon: the limit is one for each file. */
    @Test
    void aTakeThatCanNoLongerBeRecordedIsFollowedToItsEndAndKeptElsewhere() throws IOException, InterruptedException {
        Path recording = Path.of(program.recording("wheel.wav", 80));
        List<String> lines = read();
        assertThat(lines)
                .contains("status 2")
                .anyMatch(line -> line.contains("sound is not being saved"))
                .anyMatch(line -> line.matches(".* 4\\d s of sound could not be saved in the session's folder .*"
                        + "run: bookholder notes .*/session \\(it takes them in\\)"));
        Path take = folder.resolve("session/take-001.wav");
        assertThat(take.toFile().length()).isBetween(30 * 32_000L, KIBIBYTES * 1024L);
        assertThat(program.run("notes", program.path("session"))).isZero();
        assertThat(program.out()).contains("1 in all, 1 clean");
        assertThat(program.err())
                .containsPattern("1\\.4 MB that were kept in .*/bookholder-overflow-\\d+ are in the session now");
        assertThat(take).hasSameBinaryContentAs(recording);
        assertThat(program.run("notes", program.path("session"))).isZero();
        assertThat(program.err()).isEmpty();
    }

    /** More than fit into one file of the second place. */
    @Test
    void notesThatCannotBeSavedAreShownAndKeptElsewhere() throws IOException, InterruptedException {
        program.file("wheel.md", lines(TOO_MANY));
        program.recording("wheel.wav", 3.5 * TOO_MANY);
        List<String> lines = read();
        assertThat(lines)
                .contains("Pickup list: wheel", "status 2")
                .anyMatch(line -> line.contains("Notes are not being saved"))
                .noneMatch(line -> line.contains("memory is full"))
                .anyMatch(line ->
                        line.matches(".* s of sound and \\d{5} notes could not be saved in the session's folder .*"));
        assertThat(program.run("notes", program.path("session"))).isZero();
        assertThat(program.err()).contains("are in the session now");
        assertThat(program.out()).contains(TOO_MANY + " in all, " + TOO_MANY + " clean");
    }

    @Test
    void savingResumesByItselfWhenTheDiskHasRoom() throws IOException, InterruptedException {
        program.file("wheel.md", lines(MANY));
        program.recording("wheel.wav", 3.5 * MANY);
        assertThat(read())
                .as("the sound does not fit either, and is told of")
                .contains("status 2")
                .anyMatch(line -> line.contains("Notes are not being saved"))
                .noneMatch(line -> line.contains("notes could not be saved"));
        assertThat(program.run("notes", program.path("session"))).isZero();
        assertThat(program.out()).contains(MANY + " in all, " + MANY + " clean");
    }

    private static String lines(int count) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < count; i++) {
            text.append("Spoke ").append(letters(i)).append(" is turned after spoke ");
            text.append(letters(i + count)).append(".\n");
        }
        return text.toString();
    }

    /** A word of its own for each number. */
    private static String letters(int number) {
        StringBuilder word = new StringBuilder("w");
        for (int left = number; left > 0; left /= 20) {
            word.append("bcdfghjklmnpqrstvwxz".charAt(left % 20)).append('a');
        }
        return word.toString();
    }

    private List<String> read() throws IOException, InterruptedException {
        List<String> lines = new ArrayList<>();
        try (ChildJvm child = ChildJvm.startWithFileLimit(KIBIBYTES, LimitedChild.class, folder.toString())) {
            for (String line = child.readLine(); line != null; line = child.readLine()) {
                lines.add(line);
            }
            assertThat(child.end()).isZero();
        }
        return lines;
    }
}
