package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.moved;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.journal.SessionRepair.Report;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.wav.WavHeader;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SessionRepairTest {
    private static final String TEXT = "Every wheel begins with its hub.\nThe rim comes last.\n";
    private static final SessionLocks LOCKS = new SessionLocks();
    private static final List<SessionEvent> EVENTS = List.of(
            new SessionEvent.Opened(s(0), MORNING, "wheel", "wheel.md", TEXT),
            rolled(1, 1),
            moved(2, 1, 3, 2),
            moved(3, 1, 5, 2),
            cut(1, 4));

    @TempDir
    private Path parent;

    private Path folder;
    private Path journal;
    private Path take;
    private Path copies;

    @BeforeEach
    void read() throws ProblemException {
        folder = parent.resolve("session");
        journal = folder.resolve("journal.db");
        take = folder.resolve("take-001.wav");
        copies = folder.resolve("before");
        try (SessionFolder session = SessionFolder.create(folder, LOCKS)) {
            session.journal().append(EVENTS);
            session.keepScript("wheel.md", TEXT);
        }
        Wav.write(take, 16_000, Wav.sine(200, 0.1, 16_000, 3));
    }

    @Test
    void aWholeSessionStaysAsItIs() throws ProblemException, IOException {
        byte[] before = Files.readAllBytes(journal);
        assertThat(repair()).isEqualTo(new Report(Optional.empty(), 5, 0, 0, false, List.of(), List.of(), List.of()));
        assertThat(journal).hasBinaryContent(before);
        assertThat(copies).doesNotExist();
    }

    @Test
    void aDamagedJournalIsReplacedByWhatCanBeReadOfIt() throws ProblemException, IOException {
        damage("\"wordsRead\":2");
        byte[] damaged = Files.readAllBytes(journal);
        Path log = Files.writeString(folder.resolve("journal.db-wal"), "no log");

        Report report = repair();

        assertThat(report).isEqualTo(new Report(Optional.of(copies), 4, 1, 0, false, List.of(), List.of(), List.of()));
        assertThat(names(copies)).containsExactly("journal.db", "journal.db-wal", "script.md");
        assertThat(copies.resolve("journal.db")).hasBinaryContent(damaged);
        assertThat(log).doesNotExist();
        assertThat(names(folder)).containsExactly("before", "journal.db", "lock", "script.md", "take-001.wav");
        try (SessionFolder session = SessionFolder.openForReading(folder)) {
            assertThat(session.events()).hasSize(4).isSubsetOf(EVENTS);
            assertThat(session.damage()).isEmpty();
        }
        assertThat(repair().copies()).isEmpty();
    }

    @Test
    void anEntryThatHasChangedIsKeptAndNamed() throws ProblemException, IOException {
        String text = Files.readString(journal, StandardCharsets.ISO_8859_1);
        assertThat(text).contains("\"wordsRead\":2");
        Files.writeString(
                journal, text.replaceFirst("\"wordsRead\":2", "\"wordsRead\":3"), StandardCharsets.ISO_8859_1);

        assertThat(repair())
                .isEqualTo(new Report(Optional.of(copies), 5, 0, 1, false, List.of(), List.of(), List.of()));

        try (SessionFolder session = SessionFolder.openForReading(folder)) {
            assertThat(session.events()).hasSize(5);
            assertThat(session.damage()).isEmpty();
        }
    }

    @Test
    void onlyTheHeaderOfARecordingIsWrittenWhereTheJournalIsWhole() throws ProblemException, IOException {
        byte[] whole = Files.readAllBytes(take);
        byte[] damaged = whole.clone();
        Arrays.fill(damaged, 0, WavHeader.BYTES, (byte) 0);
        Files.write(take, damaged);
        byte[] before = Files.readAllBytes(journal);

        assertThat(repair())
                .isEqualTo(new Report(Optional.of(copies), 5, 0, 0, false, List.of(), List.of(take), List.of()));

        assertThat(take).hasBinaryContent(whole);
        assertThat(journal).hasBinaryContent(before);
        assertThat(names(copies))
                .contains("journal.db", "script.md", "take-001.wav.header")
                .doesNotContain("take-001.wav");
    }

    @Test
    void anEmptyRecordingIsNoRecording() throws ProblemException, IOException {
        Files.write(take, new byte[WavHeader.BYTES]);
        assertThat(repair().lost()).isEmpty();
    }

    @Test
    void aRecordingAloneIsASession() throws ProblemException, IOException {
        Files.delete(journal);
        Report report = repair();
        assertThat(report.scriptCopied()).isTrue();
        assertThat(report.takesPutBack()).containsExactly(1);
        assertThat(report.saved()).isEqualTo(2);
        assertThat(SessionFolder.isSession(folder)).isTrue();
    }

    @Test
    void withoutItsScriptASessionStaysAsItIs() throws ProblemException, IOException {
        Files.delete(folder.resolve("script.md"));
        damage("\"type\":\"opened\"");
        byte[] damaged = Files.readAllBytes(journal);
        refuses("its script is gone");
        assertThat(journal).hasBinaryContent(damaged);
        assertThat(copies).doesNotExist();
    }

    @Test
    void nothingIsChangedIfTheFilesCannotBeKept() throws ProblemException, IOException {
        damage("\"wordsRead\":2");
        byte[] damaged = Files.readAllBytes(journal);
        copies = Files.writeString(parent.resolve("file"), "").resolve("before");
        refuses("cannot be written");
        assertThat(journal).hasBinaryContent(damaged);
    }

    @Test
    void theCopiesGoIfTheNewJournalCannotTakeItsPlace() throws ProblemException, IOException {
        damage("\"wordsRead\":2");
        Path inTheWay = Files.createDirectories(folder.resolve("journal.db.repaired/x"));
        refuses("journal.db.repaired");
        assertThat(copies).doesNotExist();
        assertThat(inTheWay).exists();
    }

    @Test
    void whatIsNoSessionIsRefused() throws IOException {
        folder = parent.resolve("none");
        refuses("there is no such folder");
        Files.createDirectory(folder);
        refuses("holds no session");
        Files.writeString(folder.resolve("letter.txt"), "Dear");
        refuses("holds no session");
        assertThat(names(folder)).containsExactly("letter.txt");
    }

    @Test
    void theFolderIsFreeAfterwards() throws ProblemException {
        try (SessionFolder open = SessionFolder.open(folder, LOCKS)) {
            refuses("open in another process");
            assertThat(open.events()).isEqualTo(EVENTS);
        }
        repair();
        SessionFolder.open(folder, LOCKS).close();
    }

    private Report repair() throws ProblemException {
        return SessionRepair.repair(folder, copies, LOCKS);
    }

    private void refuses(String why) {
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(this::repair)
                .withMessageContaining(why);
    }

    /** Changes one letter of the first such text in the journal's file. */
    private void damage(String text) throws IOException {
        byte[] bytes = Files.readAllBytes(journal);
        int at = new String(bytes, StandardCharsets.ISO_8859_1).indexOf(text);
        assertThat(at).as(text).isPositive();
        bytes[at + 1] = 0x01;
        Files.write(journal, bytes);
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.map(entry -> entry.getFileName().toString())
                    .filter(name -> !name.endsWith("-shm"))
                    .sorted()
                    .toList();
        }
    }
}
