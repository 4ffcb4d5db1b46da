package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionSummary.Standing;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.speech.wav.WavHeader;
import org.bookholder.testing.Audio;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SessionFolderTest {
    private static final SessionLocks LOCKS = new SessionLocks();

    private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");

    @TempDir
    private Path parent;

    @Test
    void keepsEventsTakesAndScriptInOneFolder() throws ProblemException, IOException {
        Path folder = parent.resolve("new/session");
        try (SessionFolder session = SessionFolder.create(folder, LOCKS)) {
            session.journal().append(opened(NOON));
            session.keepScript("lessons/hive.md", "Spring. \u00bd\n");
            session.keepScript("HIVE.TXT", "Spring.\n");
            record(session, 1, 480);
        }
        assertThat(folder).isDirectoryContaining("glob:**/journal.db").isDirectoryContaining("glob:**/take-001.wav");
        assertThat(folder.resolve("script.md")).hasContent("Spring. \u00bd\n");
        assertThat(folder.resolve("script.txt")).hasContent("Spring.\n");
        try (SessionFolder session = SessionFolder.open(folder, LOCKS)) {
            assertThat(session.journal().events()).containsExactly(opened(NOON));
            assertThat(session.audio(1, StreamTime.ZERO)).isPresent().get().satisfies(TakeAudio::close);
            assertThat(session.audio(2, StreamTime.ZERO)).isEmpty();
        }
    }

    @Test
    void staysLockedAndOpenForAThreadThatHangsInWriting() throws ProblemException {
        Path folder = parent.resolve("hanging");
        SessionFolder session = SessionFolder.create(folder, LOCKS);
        session.leaveOpen();
        session.close();
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> SessionFolder.open(folder, LOCKS))
                .satisfies(e -> assertThat(e.what()).contains("open in another process"));
        session.journal().append(opened(NOON));
        assertThat(session.journal().events()).containsExactly(opened(NOON));
        session.journal().close();
    }

    @Test
    void onlyTheOwnerMayReadWhatWasRecorded() throws ProblemException, IOException {
        Path folder = parent.resolve("sessions/first");
        try (SessionFolder session = SessionFolder.create(folder, LOCKS)) {
            session.journal().append(opened(NOON));
            session.keepScript("hive.md", "Spring.\n");
            record(session, 1, 480);
            assertThat(List.of(folder.getParent(), folder))
                    .allSatisfy(f -> assertThat(permissions(f)).isEqualTo("rwx------"));
            assertThat(folder.toFile().list())
                    .containsExactlyInAnyOrder(
                            "journal.db", "journal.db-wal", "journal.db-shm", "lock", "script.md", "take-001.wav");
            assertThat(folder.toFile().listFiles())
                    .allSatisfy(f -> assertThat(permissions(f.toPath())).isEqualTo("rw-------"));
        }
    }

    private static String permissions(Path file) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(file));
    }

    @Test
    void usesAnEmptyFolderAndOneThatAKillLeftUnfinished() throws ProblemException, IOException {
        SessionFolder.create(parent, LOCKS).close();
        Path killed = Files.createDirectory(parent.resolve("killed"));
        Files.createFile(killed.resolve("lock"));
        SessionFolder.create(killed, LOCKS).close();
        assertThat(SessionFolder.isSession(killed)).isTrue();
    }

    @Test
    void createsNoFilesInOtherFolders() throws IOException {
        Files.writeString(parent.resolve("letter.txt"), "Dear");
        assertProblem(() -> SessionFolder.create(parent, LOCKS), "not empty");
        assertProblem(() -> SessionFolder.open(parent, LOCKS), "holds no session");
        assertProblem(() -> SessionFolder.openForReading(parent), "holds no session");
        assertProblem(() -> SessionFolder.open(parent.resolve("none"), LOCKS), "no such folder");
        assertProblem(() -> SessionFolder.create(parent.resolve("letter.txt"), LOCKS), "cannot be written");
        try (Stream<Path> entries = Files.list(parent)) {
            assertThat(entries).containsExactly(parent.resolve("letter.txt"));
        }
    }

    @Test
    void beginsNoSecondSessionInAFolder() throws ProblemException {
        SessionFolder.create(parent, LOCKS).close();
        assertProblem(() -> SessionFolder.create(parent, LOCKS), "holds a session already");
    }

    @Test
    void refusesASecondWriterInTheSameProcessAndKeepsTheFirst() throws ProblemException {
        Path folder = parent.resolve("session");
        try (SessionFolder first = SessionFolder.create(folder, LOCKS)) {
            assertProblem(() -> SessionFolder.open(folder, LOCKS), "open in another process");
            assertProblem(() -> SessionFolder.open(folder, LOCKS), "open in another process");
            first.journal().append(opened(NOON));
            try (SessionFolder reader = SessionFolder.openForReading(folder)) {
                assertThat(reader.journal().events()).containsExactly(opened(NOON));
                assertThatIllegalStateException().isThrownBy(() -> reader.record(1, 16_000, StreamTime.ZERO));
            }
        }
        SessionFolder.open(folder, LOCKS).close();
    }

    /** Even the super-user cannot open a folder as a file, so this stands for all that forbids the lock. */
    @Test
    void reportsAReadOnlyFolder() throws ProblemException, IOException {
        SessionFolder.create(parent, LOCKS).close();
        Files.delete(parent.resolve("lock"));
        Files.createDirectory(parent.resolve("lock"));
        assertProblem(() -> SessionFolder.open(parent, LOCKS), "cannot be written");
        SessionFolder.openForReading(parent).close();
    }

    @Test
    void neverWritesOverARecording() throws ProblemException, IOException {
        try (SessionFolder session = SessionFolder.create(parent, LOCKS)) {
            record(session, 1, 100);
            record(session, 1, 200);
            record(session, 1, 300);
            assertThat(session.takeFile(1)).hasSize(WavHeader.BYTES + 600);
        }
        assertThat(parent.resolve("take-001.1.wav")).hasSize(WavHeader.BYTES + 200);
        assertThat(parent.resolve("take-001.2.wav")).hasSize(WavHeader.BYTES + 400);
    }

    @Test
    void repairsHeadersWhenItIsOpenedAndNotWhenItIsRead() throws ProblemException, IOException {
        SessionFolder.create(parent, LOCKS).close();
        Path take = parent.resolve("take-001.wav");
        byte[] lagging = new byte[WavHeader.BYTES + 1_000];
        System.arraycopy(WavHeader.of(16_000, 0), 0, lagging, 0, WavHeader.BYTES);
        Files.write(take, lagging);
        SessionFolder.openForReading(parent).close();
        assertThat(take).hasBinaryContent(lagging);
        SessionFolder.open(parent, LOCKS).close();
        System.arraycopy(WavHeader.of(16_000, 1_000), 0, lagging, 0, WavHeader.BYTES);
        assertThat(take).hasBinaryContent(lagging);
    }

    @Test
    void listsSessionsHoweverTheyWereLeft() throws ProblemException, IOException {
        assertThat(SessionFolder.list(parent.resolve("none"), LOCKS)).isEmpty();
        session("finished", NOON, true).close();
        session("killed", NOON.minusSeconds(60), false).close();
        Files.write(Files.createDirectory(parent.resolve("broken")).resolve("journal.db"), new byte[] {1, 2, 3});
        Files.createDirectory(parent.resolve("photos"));
        try (SessionFolder open = session("running", NOON.plusSeconds(60), false)) {
            assertThat(SessionFolder.list(parent, LOCKS))
                    .extracting(s -> s.folder().getFileName().toString(), SessionSummary::standing)
                    .containsExactly(
                            tuple("killed", Standing.BROKEN_OFF),
                            tuple("finished", Standing.FINISHED),
                            tuple("running", Standing.OPEN),
                            tuple("broken", Standing.UNREADABLE));
            assertProblem(() -> SessionFolder.open(open.path(), LOCKS), "open in another process");
        }
        SessionSummary killed = SessionFolder.list(parent, LOCKS).get(0);
        assertThat(killed)
                .isEqualTo(new SessionSummary(
                        parent.resolve("killed"),
                        "Hive",
                        Optional.of(NOON.minusSeconds(60)),
                        1,
                        StreamTime.ofSeconds(5),
                        Standing.BROKEN_OFF,
                        ""));
        assertThat(SessionFolder.list(parent, LOCKS).get(3).trouble()).contains("not a session's journal");
    }

    @Test
    void aSessionThatWasEndedWhileItBeganIsEmpty() throws ProblemException {
        SessionFolder.create(parent.resolve("begun"), LOCKS).close();
        assertThat(SessionFolder.summary(parent.resolve("begun"), LOCKS).standing())
                .isEqualTo(Standing.EMPTY);
    }

    @Test
    void aSessionWhoseLastTakeWasCutAndThatWasNotClosedIsBrokenOff() throws ProblemException, IOException {
        Path killed = Files.createDirectory(parent.resolve("killed"));
        try (SessionFolder open = session("running", NOON, true)) {
            for (String file : List.of("journal.db", "journal.db-wal")) {
                Files.copy(open.path().resolve(file), killed.resolve(file));
            }
        }
        assertThat(SessionFolder.summary(killed, LOCKS).standing()).isEqualTo(Standing.BROKEN_OFF);
    }

    @Test
    void onlyTheFilesOfTakesAreTakes() {
        assertThat(List.of("take-001.wav", "take-1000.wav", "take-001.2.wav"))
                .allMatch(name -> SessionFolder.isTake(parent.resolve(name)));
        assertThat(List.of("take-1.wav", "take-001.mp3", "my-take-001.wav", "take-001.wav.part"))
                .noneMatch(name -> SessionFolder.isTake(parent.resolve(name)));
        assertThatIllegalArgumentException().isThrownBy(() -> SessionFolder.takeFile(parent, 0));
    }

    private SessionFolder session(String name, Instant when, boolean cut) throws ProblemException {
        SessionFolder session = SessionFolder.create(parent.resolve(name), LOCKS);
        session.journal().append(opened(when));
        session.journal().append(new SessionEvent.TakeStarted(StreamTime.ZERO, 1, when, "mic", ReadingPosition.START));
        session.journal().append(new SessionEvent.Held(StreamTime.ofSeconds(5)));
        if (cut) {
            session.journal().append(new SessionEvent.TakeEnded(StreamTime.ofSeconds(5), 1, when, TakeEnd.CUT));
        }
        return session;
    }

    private static SessionEvent opened(Instant when) {
        return new SessionEvent.Opened(StreamTime.ZERO, when, "Hive", "hive.md", "Spring.\n");
    }

    private static void record(SessionFolder session, int take, int samples) throws ProblemException {
        try (TakeRecording recording = session.record(take, 16_000, StreamTime.ZERO)) {
            recording.append(Audio.block(StreamTime.ZERO, 16_000, 0, samples));
        }
    }

    private static void assertProblem(ThrowingCallable action, String what) {
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(action)
                .satisfies(e -> assertThat(e.what()).contains(what))
                .satisfies(e -> assertThat(e.remedy()).isNotBlank());
    }
}
