package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Damaged sessions repaired; how much of a journal comes back is measured by {@code DamagedJournalTest}. */
final class RepairCommandTest {
    @TempDir
    private Path folder;

    private Program program;
    private Path session;
    private Path journal;

    @BeforeEach
    void readTwice() {
        program = new Program(folder);
        session = folder.resolve("session");
        journal = session.resolve("journal.db");
        read();
        read();
    }

    private void read() {
        assertThat(program.read(
                        program.file("wheel.md", "Every wheel begins with its hub.\nThe rim comes last.\n"),
                        program.recording("wheel.wav", 0.5),
                        session.toString()))
                .as(program.err())
                .isZero();
    }

    @Test
    void aHealthySessionStaysAsItIs() throws IOException {
        Map<String, String> before = files();
        assertThat(repair()).isZero();
        assertThat(program.out()).isEqualTo("Nothing had to be repaired in " + session + ".\n");
        assertThat(files()).isEqualTo(before);
    }

    @Test
    void theResultIsGivenToOtherProgramsAsJson() throws IOException {
        replace("{\"type\":\"take-ended\"", "{\"type\":\"take_ended\"");
        assertThat(program.run("repair", session.toString(), "--json")).isZero();
        JsonNode result = new ObjectMapper().readTree(program.out());
        assertThat(result.path("session").asText()).isEqualTo(session.toString());
        assertThat(result.path("repaired").asBoolean()).isTrue();
        assertThat(result.path("copies").asText()).isEqualTo(copies().toString());
        assertThat(result.path("gone").asInt()).isEqualTo(1);
        assertThat(result.path("saved").asInt()).isPositive();
        for (String list : List.of("takes_put_back", "headers", "lost", "taken_in", "not_listened_to")) {
            assertThat(result.path(list).isArray()).as(list).isTrue();
            assertThat(result.path(list)).as(list).isEmpty();
        }

        assertThat(program.run("repair", session.toString(), "--json")).isZero();
        JsonNode again = new ObjectMapper().readTree(program.out());
        assertThat(again.path("repaired").asBoolean()).isFalse();
        assertThat(again.path("copies").isNull()).isTrue();
    }

    @Test
    void aFolderInWhichNothingWasKeptIsRefusedInOneLine() {
        assertThat(program.run("repair", session.toString(), "--kept", folder.toString()))
                .isEqualTo(2);
        assertThat(program.err())
                .isEqualTo("bookholder: " + folder
                        + ": nothing of a session is kept there; name the folder that Bookholder named\n");
    }

    /** The header of a recording has the layout of "Multimedia Programming Interface and Data Specifications 1.0" (1991). */
    @Test
    void aHeaderOfNoughtsIsWrittenAgain() throws IOException {
        Path take = session.resolve("take-002.wav");
        byte[] whole = Files.readAllBytes(take);
        byte[] damaged = whole.clone();
        Arrays.fill(damaged, 0, 44, (byte) 0);
        Files.write(take, damaged);
        assertThat(repair()).isZero();
        assertThat(program.out()).contains("The header was written again: take-002.wav");
        assertThat(take).hasBinaryContent(whole);
        assertThat(copies().resolve("take-002.wav.header")).hasBinaryContent(new byte[44]);
        assertThat(program.run("handoff", session.toString())).isZero();
        assertThat(program.err()).isEmpty();
    }

    @Test
    void aJournalWithoutAHeaderIsReadAndRepaired() throws IOException {
        assertThat(program.run("notes", session.toString())).isZero();
        String notes = program.out();
        byte[] bytes = Files.readAllBytes(journal);
        Arrays.fill(bytes, 0, 4096, (byte) 0x5A);
        Files.write(journal, bytes);

        assertThat(program.run("notes", session.toString())).isZero();
        assertThat(program.out()).isEqualTo(notes);
        assertThat(program.err().lines())
                .singleElement()
                .asString()
                .contains("is damaged", "bookholder repair " + session);
        assertThat(program.run("desk", session.toString())).isEqualTo(2);
        assertThat(program.err()).contains("bookholder repair " + session);

        assertThat(repair()).isZero();
        assertThat(copies().resolve("journal.db")).hasBinaryContent(bytes);
        assertThat(program.run("notes", session.toString())).isZero();
        assertThat(program.out()).isEqualTo(notes);
        assertThat(program.err()).isEmpty();
        read();
        assertThat(session.resolve("take-003.wav")).exists();
    }

    /** Damages one byte of a row: the row cannot be decoded, but SQLite does not notice. */
    @Test
    void aRowThatCannotBeUnderstoodCostsItselfOnly() throws IOException {
        replace("{\"type\":\"take-ended\"", "{\"type\":\"take_ended\"");
        assertThat(program.run("notes", session.toString())).isZero();
        assertThat(program.err()).contains("entries cannot be read", "bookholder repair " + session);
        assertThat(program.run("sessions", folder.toString())).isZero();
        assertThat(program.out()).contains("entries cannot be read");
        assertThat(repair()).isZero();
        assertThat(program.out()).contains("Gone:  1 entry");
        assertThat(program.run("notes", session.toString())).isZero();
        assertThat(program.err()).isEmpty();
    }

    @Test
    void withoutItsJournalASessionIsMadeOfItsScriptAndRecordings() throws IOException {
        Files.delete(journal);
        Files.createFile(journal);
        assertThat(repair()).isZero();
        assertThat(program.out())
                .contains("The script is that of the copy")
                .contains("where these takes begin; it was worked out again: 1, 2");
        assertThat(program.err()).contains("takes 1, 2 were broken off; listening again");
        assertThat(program.run("notes", session.toString())).isZero();
        assertThat(program.run("handoff", session.toString())).isZero();
    }

    @Test
    void withoutItsFirstRowsTheScriptIsThatOfTheCopy() throws IOException {
        replace("{\"type\":\"opened\"", "{\"type\":\"ope?ed\"");
        replace("{\"type\":\"opened\"", "{\"type\":\"ope?ed\"");
        assertThat(program.run("notes", session.toString())).isZero();
        assertThat(repair()).isZero();
        assertThat(program.out()).contains("Gone:  2 entries", "The script is that of the copy");
        assertThat(program.run("notes", session.toString())).isZero();
        assertThat(program.out()).contains("2 in all");
    }

    @Test
    void anOpenSessionIsRefusedInOneLine() throws IOException, ProblemException {
        Map<String, String> before = files();
        try (SessionFolder open = SessionFolder.open(session, new SessionLocks())) {
            assertThat(repair()).isEqualTo(2);
            assertThat(program.err())
                    .isEqualTo("bookholder: " + open.path()
                            + ": the session is open in another process; end the reading or review there, or press Quit"
                            + " on Bookholder's page; a new session needs another folder\n");
        }
        assertThat(files()).isEqualTo(before);
    }

    @Test
    void whatIsNoSessionIsRefused() {
        assertThat(program.run("repair", program.path("none"))).isEqualTo(2);
        assertThat(program.err()).contains("there is no such folder");
        assertThat(program.run("repair", folder.toString())).isEqualTo(2);
        assertThat(program.err()).contains("holds no session");
    }

    /** Changes the first such text in the journal's file. */
    private void replace(String text, String other) throws IOException {
        String all = Files.readString(journal, StandardCharsets.ISO_8859_1);
        int at = all.indexOf(text);
        assertThat(at).isPositive();
        Files.writeString(
                journal,
                all.substring(0, at) + other + all.substring(at + other.length()),
                StandardCharsets.ISO_8859_1);
    }

    private int repair() {
        return program.run("repair", session.toString());
    }

    private Path copies() throws IOException {
        try (Stream<Path> entries = Files.list(session)) {
            return entries.filter(entry -> entry.getFileName().toString().startsWith("before-repair-"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private Map<String, String> files() throws IOException {
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> entries = Files.list(session)) {
            // SQLite leaves an index and an empty log behind when it has read.
            for (Path entry :
                    entries.filter(e -> !e.toString().matches(".*-(shm|wal)")).toList()) {
                files.put(
                        entry.getFileName().toString(),
                        Files.size(entry) + " bytes, hash " + Arrays.hashCode(Files.readAllBytes(entry)));
            }
        }
        assertThat(files.keySet()).containsAll(List.of("journal.db", "take-001.wav", "script.md"));
        return files;
    }
}
