package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.bookholder.journal.sqlite.SqliteJournal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * Sessions in a place that cannot be written: a mount of the session's folder that is read-only, in a name space of the child's
 * own. Permissions would mean nothing to an administrator.
 */
@Timeout(120)
@Execution(ExecutionMode.CONCURRENT)
final class ReadOnlyPlaceTest {
    @TempDir
    private Path folder;

    private Program program;
    private Path session;

    @BeforeEach
    void readOnce() throws InterruptedException, IOException {
        Needs.that(canMount(), "a read-only mount cannot be made (unshare -rm)");
        program = new Program(folder);
        session = folder.resolve("sessions/session");
        assertThat(program.read(
                        program.file("wheel.md", "Every wheel begins with its hub.\n"),
                        program.recording("wheel.wav", 0.5),
                        session.toString()))
                .as(program.err())
                .isZero();
    }

    @Test
    void notesAndSessionsAreShown() throws IOException, InterruptedException {
        assertThat(program.run("notes", session.toString())).isZero();
        Map<String, Integer> before = files();
        assertThat(String.join("\n", run("notes", session.toString())))
                .isEqualTo(program.out().stripTrailing() + "\nexit status 0");
        assertThat(run("sessions", Objects.requireNonNull(session.getParent()).toString()))
                .hasSize(2)
                .first()
                .asString()
                .contains("finished", "wheel");
        assertThat(files()).isEqualTo(before);
    }

    /** What a kill leaves in the write-ahead log is read too. */
    @Test
    void theLogOfAKilledSessionIsReadToo() throws IOException, InterruptedException, ProblemException {
        leaveAsIfKilled();
        assertThat(run("notes", session.toString())).anyMatch(line -> line.contains("a passing van"));
    }

    @Test
    void theLogOfAKilledSessionIsPackedToo() throws IOException, InterruptedException, ProblemException {
        leaveAsIfKilled();
        Path archive = folder.resolve("killed.zip");
        assertThat(run("pack", session.toString(), archive.toString())).contains("exit status 0");
        String unpacked = folder.resolve("unpacked").toString();
        assertThat(program.run("unpack", archive.toString(), unpacked)).isZero();
        assertThat(program.run("notes", unpacked)).isZero();
        assertThat(program.out()).contains("a passing van");
    }

    private void leaveAsIfKilled() throws IOException, ProblemException {
        try (SqliteJournal open = SqliteJournal.open(session.resolve("journal.db"))) {
            open.append(new SessionEvent.PickupMarked(StreamTime.ofSeconds(0.5), 1, "a passing van"));
            Path killed = Files.createDirectories(folder.resolve("killed"));
            try (Stream<Path> entries = Files.list(session)) {
                for (Path entry :
                        entries.filter(e -> !e.toString().endsWith("-shm")).toList()) {
                    Files.copy(entry, killed.resolve(entry.getFileName()));
                }
            }
        }
        session = folder.resolve("killed");
        assertThat(session.resolve("journal.db-wal")).isNotEmptyFile();
    }

    @Test
    void aHandOffIsWrittenElsewhere() throws IOException, InterruptedException {
        Path out = folder.resolve("out");
        assertThat(run("handoff", session.toString(), "--out", out.toString())).contains("exit status 0");
        assertThat(out).isDirectoryContaining("glob:**-take-001.wav");
        assertThat(run("handoff", session.toString()))
                .contains("exit status 2")
                .anyMatch(line -> line.contains("choose a folder that can be written"));
    }

    @Test
    void theDeskOnlyLooks() throws IOException, InterruptedException {
        try (ChildJvm child = ChildJvm.startBy(mounted(), Main.class, "desk", session.toString())) {
            assertThat(child.readTo("Desk:")).contains("http://127.0.0.1:");
            assertThat(child.terminate()).noneMatch(line -> line.contains("fault"));
        }
    }

    @Test
    void aRepairIsRefusedInOneLine() throws IOException, InterruptedException {
        assertThat(run("repair", session.toString()))
                .hasSize(2)
                .contains("exit status 2")
                .first()
                .asString()
                .contains("cannot be written");
    }

    private List<String> run(String... arguments) throws IOException, InterruptedException {
        try (ChildJvm child = ChildJvm.startBy(mounted(), Main.class, arguments)) {
            return child.untilItEnds();
        }
    }

    private List<String> mounted() {
        return List.of(
                "unshare",
                "-rm",
                "sh",
                "-c",
                "mount --bind \"$0\" \"$0\" && mount -o remount,bind,ro \"$0\" && exec \"$@\"",
                session.toString());
    }

    private boolean canMount() throws InterruptedException {
        session = folder;
        try {
            List<String> command = new ArrayList<>(mounted());
            command.addAll(List.of("test", "!", "-w", folder.toString()));
            return new ProcessBuilder(command).start().waitFor() == 0;
        } catch (IOException e) {
            return false;
        }
    }

    private Map<String, Integer> files() throws IOException {
        Map<String, Integer> files = new TreeMap<>();
        try (Stream<Path> entries = Files.list(session)) {
            for (Path entry : entries.toList()) {
                files.put(entry.getFileName().toString(), Arrays.hashCode(Files.readAllBytes(entry)));
            }
        }
        return files;
    }
}
