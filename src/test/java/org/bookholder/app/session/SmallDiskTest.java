package org.bookholder.app.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.KeptElsewhere;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Folders;
import org.bookholder.testing.Needs;
import org.bookholder.testing.ReadingRig;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * Readings, in virtual time, with the real journal and real recordings on a disk that is full, or from which the folder disappears.
 * Nothing may be lost or doubled: the session is compared with one to which nothing happened.
 */
@EnabledOnOs(value = OS.LINUX, disabledReason = "small disks are mounted with unshare and tmpfs of Linux")
@Timeout(120)
@Execution(ExecutionMode.CONCURRENT)
final class SmallDiskTest {
    @TempDir
    private Path folder;

    private Path undisturbed;

    @BeforeEach
    void readUndisturbed() throws ProblemException {
        undisturbed = folder.resolve("undisturbed");
        try (SmallDisk trial = new SmallDisk(undisturbed, folder.resolve("other-data"))) {
            trial.pass(SmallDisk.SECONDS);
            assertThat(trial.end()).isEmpty();
        }
    }

    @Test
    void aDiskThatIsFullForAMomentLosesNothing() throws IOException, InterruptedException, ProblemException {
        assertThat(runOnSmallDisk("moment"))
                .contains("kept: nothing", "unsaved: ", "faults: []", "taken in: []", "left: []", "exit status 0");
        assertSame(folder.resolve("copy"));
    }

    @Test
    void nothingIsLostOnADiskThatStaysFull() throws IOException, InterruptedException, ProblemException {
        assertThat(runOnSmallDisk("good"))
                .contains("unsaved: ", "faults: []", "left: []", "exit status 0")
                .anyMatch(line -> line.matches(
                        "still full: .*/session: a part of this session is in .*/bookholder-overflow-\\d+ and"
                                + " cannot be taken in now \\(.*: the disk is full\\); free some space.*"))
                .anyMatch(line -> line.matches(
                        "kept: 4\\d s of sound and \\d+ notes could not be saved in the session's folder \\("
                                + ".*: the disk is full\\) and are kept in " + folder.resolve("data/overflow")
                                + "/bookholder-overflow-\\d+"))
                .anyMatch(line -> line.matches("taken in: \\[1\\.\\d MB that were kept in .* are in the session now]"));
        assertSame(folder.resolve("copy"));
        assertThat(folder.resolve("data/overflow")).isEmptyDirectory();
    }

    /** SIGKILL after 24 s of a full disk. */
    @Test
    void aKillWhileTheDiskIsFullLosesASecondAtMost() throws IOException, InterruptedException, ProblemException {
        assertThat(runOnSmallDisk("kill"))
                .contains("exit status 0")
                .anyMatch(
                        line -> line.matches("taken in: \\[\\d\\.\\d MB that were kept in .* are in the session now]"));
        Path copy = folder.resolve("copy");
        byte[] take = Files.readAllBytes(copy.resolve("take-001.wav"));
        byte[] whole = Files.readAllBytes(undisturbed.resolve("take-001.wav"));
        assertThat((take.length - 44) / 2.0 / ReadingRig.RATE)
                .isBetween(SmallDisk.KILLED_AT - 1.1, SmallDisk.KILLED_AT);
        assertThat(Arrays.equals(take, 44, take.length, whole, 44, take.length)).isTrue();
        List<SessionEvent> all = events(undisturbed);
        List<SessionEvent> events = events(copy);
        assertThat(events).isEqualTo(all.subList(0, events.size()));
        assertThat(all.get(events.size()).at().seconds()).isGreaterThan(SmallDisk.KILLED_AT - 2.1);
        assertThat(folder.resolve("data/overflow")).isEmptyDirectory();
    }

    @Test
    void nothingIsLostWhenTheFolderIsDeleted() throws ProblemException, IOException {
        Path session = folder.resolve("sessions/session");
        try (SmallDisk trial = new SmallDisk(session, folder.resolve("data"))) {
            passWhileTheFolderIsDeleted(trial, session);
            Optional<KeptElsewhere> kept = trial.end();
            assertThat(kept).isPresent();
            assertThat(kept.get().sentence()).startsWith("60 s of sound and").contains("is gone");
            assertThat(trial.unsaved()).isEmpty();
            assertThat(trial.faults()).isEmpty();
            assertThat(session).doesNotExist();

            assertThat(Overflows.takeIn(trial.here, session)).hasSize(1);
            assertThat(Overflows.of(trial.here, session)).isEmpty();
        }
        assertSame(session);
        assertThat(session.resolve("script.md")).hasContent(ReadingRig.TEXT);
    }

    @Test
    void aMovedSecondPlaceIsTakenInByItsName() throws ProblemException, IOException {
        Path session = folder.resolve("sessions/session");
        try (SmallDisk trial = new SmallDisk(session, folder.resolve("data"))) {
            passWhileTheFolderIsDeleted(trial, session);
            trial.end();
            Path kept = Overflows.of(trial.here, session).get(0).path();
            Path moved = Files.move(kept, folder.resolve("moved"));
            assertThat(Overflows.takeIn(trial.here, session)).isEmpty();
            Path other = folder.resolve("sessions/other");
            assertThatThrownBy(() -> Overflows.takeIn(trial.here, other, folder))
                    .hasMessageContaining("nothing of a session is kept there");
            assertThat(Overflows.takeIn(trial.here, other, moved)).hasSize(1);
            assertThat(moved).doesNotExist();
            assertSame(other);
        }
    }

    /** If a session continues before its notes were taken in, they no longer fit it and stay where they are. */
    @Test
    void aSessionThatWentOnWithoutThemIsNotMixed() throws ProblemException, IOException {
        Path session = folder.resolve("sessions/session");
        try (SmallDisk trial = new SmallDisk(session, folder.resolve("data"))) {
            trial.pass(20);
            Path away = Files.move(session, folder.resolve("away"));
            trial.pass(SmallDisk.SECONDS - 20);
            trial.end();
            Files.move(away, session);
            List<SessionEvent> before;
            try (SessionFolder open = SessionFolder.open(session, trial.here.locks())) {
                open.journal()
                        .append(new SessionEvent.PickupMarked(
                                open.events().get(9).at(), 1, "a van"));
                before = open.events();
            }
            assertThatThrownBy(() -> Overflows.takeIn(trial.here, session))
                    .isInstanceOf(ProblemException.class)
                    .hasMessageContaining("the session went on without the notes that are kept there");
            try (SessionFolder open = SessionFolder.openForReading(session)) {
                assertThat(open.events()).isEqualTo(before);
            }
            assertThat(Overflows.of(trial.here, session)).hasSize(1);
        }
    }

    private static void passWhileTheFolderIsDeleted(SmallDisk trial, Path session) throws IOException {
        trial.pass(20);
        Folders.delete(session);
        trial.pass(SmallDisk.SECONDS - 20);
    }

    private List<String> runOnSmallDisk(String how) throws IOException, InterruptedException {
        Needs.mounts();
        Path disk = Files.createDirectories(folder.resolve("disk"));
        String mount = "mount -t tmpfs -o size=12M none \"$0\" && exec \"$@\"";
        try (ChildJvm child = ChildJvm.startBy(
                List.of("unshare", "-rm", "sh", "-c", mount, disk.toString()),
                SmallDisk.Child.class,
                how,
                disk.toString(),
                folder.resolve("data").toString(),
                folder.resolve("copy").toString())) {
            return child.untilItEnds();
        }
    }

    private void assertSame(Path session) throws ProblemException, IOException {
        assertThat(events(session)).isEqualTo(events(undisturbed));
        assertThat(session.resolve("take-001.wav")).hasSameBinaryContentAs(undisturbed.resolve("take-001.wav"));
    }

    /** All events except those about the disk. */
    private static List<SessionEvent> events(Path session) throws ProblemException {
        try (SessionFolder open = SessionFolder.openForReading(session)) {
            List<SessionEvent> events = open.events();
            assertThat(open.damage()).isEmpty();
            return events.stream()
                    .filter(event -> !(event instanceof SessionEvent.RecordingFailed))
                    .filter(event -> !(event instanceof SessionEvent.RecordingResumed))
                    .toList();
        }
    }
}
