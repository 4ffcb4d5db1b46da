package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.app.session.SessionPacking;
import org.bookholder.app.session.SessionUnpacking;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Needs;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sessions packed into an archive and opened again at another place, by this program and by others. */
final class PackCommandTest {
    @TempDir
    private Path folder;

    private Program program;
    private Path session;
    private Path archive;
    private Path unpacked;

    @BeforeEach
    void keep() throws ProblemException, IOException {
        program = new Program(folder);
        session = folder.resolve("here/2026-11-28-1000-a-lesson");
        archive = folder.resolve("session.zip");
        unpacked = folder.resolve("elsewhere/session");
        StoredExamples.write(session, "lesson.md");
        for (String name : List.of("desk.json", "fault.log", "read-right.json", "notes.txt", ".x.part")) {
            Files.writeString(session.resolve(name), "for this machine only");
        }
        Files.writeString(session.resolve("script.md"), StoredExamples.script());
        Files.writeString(session.resolve("footage.json"), "{\"footage\":[]}");
        // A second file of a take, and one that a kill left.
        Files.copy(session.resolve("take-001.wav"), session.resolve("take-001.2.wav"));
        Files.write(session.resolve("take-002.wav"), new byte[0]);
    }

    @Test
    void anArchiveHoldsWhatTheSessionConsistsOfAndNothingOfThisMachine() throws IOException {
        pack();
        assertThat(program.out())
                .startsWith("Packed: " + archive + " (8 files, ")
                .contains("bookholder unpack " + archive);
        try (ZipFile zip = new ZipFile(archive.toFile())) {
            assertThat(zip.stream().map(ZipEntry::getName))
                    .containsExactlyInAnyOrder(
                            "2026-11-28-1000-a-lesson/journal.db",
                            "2026-11-28-1000-a-lesson/take-001.wav",
                            "2026-11-28-1000-a-lesson/take-001.2.wav",
                            "2026-11-28-1000-a-lesson/take-002.wav",
                            "2026-11-28-1000-a-lesson/script.md",
                            "2026-11-28-1000-a-lesson/footage.json",
                            "2026-11-28-1000-a-lesson/notes.txt",
                            "2026-11-28-1000-a-lesson/notes.json",
                            "2026-11-28-1000-a-lesson/SHA256SUMS");
            assertThat(text(zip, "notes.txt")).contains("Pickup list");
            assertThat(text(zip, "notes.json")).isEqualTo(notes(session));
        }
        if (Files.getFileStore(archive).supportsFileAttributeView("posix")) {
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(archive)))
                    .isEqualTo("rw-------");
        }
        assertThat(folder).isDirectoryNotContaining("glob:**.part");
    }

    @Test
    void atAnotherPlaceNotesAndHandOffAreTheSameAndItCanBeOpened() throws IOException {
        pack();
        assertThat(program.run("unpack", archive.toString(), unpacked.toString()))
                .isZero();
        assertThat(program.out()).contains("Session: " + unpacked, "bookholder desk " + unpacked);
        assertThat(unpacked.toFile().list())
                .containsExactlyInAnyOrder(
                        "journal.db", "take-001.wav", "take-001.2.wav", "take-002.wav", "script.md", "footage.json");
        assertThat(notes(unpacked)).isEqualTo(notes(session));
        assertThat(handOff(unpacked)).isNotEmpty().isEqualTo(handOff(session));

        program.types("\n");
        assertThat(program.run("desk", unpacked.toString())).isZero();
        assertThat(program.out()).contains("Session: " + unpacked, "http://127.0.0.1:");

        String script = program.file("lesson.md", StoredExamples.script());
        String quiet = program.recording("quiet.wav", 1);
        assertThat(program.read(script, quiet, unpacked.toString())).isZero();
        assertThat(notes(unpacked)).contains("\"take\" : 1").isNotEqualTo(notes(session));
    }

    @Test
    void withoutAFolderItComesToWhereSessionsLie() throws IOException {
        pack();
        assertThat(program.run("unpack", archive.toString())).isZero();
        Path place = folder.resolve("data/sessions/2026-11-28-1000-a-lesson");
        assertThat(notes(place)).isEqualTo(notes(session));
        assertRefused("is there already, and nothing was unpacked", "unpack", archive.toString());
    }

    @Test
    void otherProgramsFindItWholeAndCheckTheSums() throws IOException, InterruptedException {
        Needs.program("unzip", "Debian package unzip");
        Needs.program("sha256sum", "Debian package coreutils");
        pack();
        assertThat(run(folder, "unzip", "-t", archive.toString())).contains("No errors detected");
        run(folder, "unzip", "-q", archive.toString(), "-d", "plain");
        Path plain = folder.resolve("plain/2026-11-28-1000-a-lesson");
        assertThat(run(plain, "sha256sum", "-c", "--strict", "SHA256SUMS").lines())
                .hasSize(8)
                .allMatch(line -> line.endsWith(": OK"));
        assertThat(notes(plain)).isEqualTo(notes(session));
    }

    @Test
    void aJournalThatAKillLeftInTwoFilesIsPackedAsOne() throws Exception {
        Path killed = Files.createDirectories(folder.resolve("killed"));
        Path running = folder.resolve("running");
        try (SessionFolder open = SessionFolder.create(running, new SessionLocks());
                SessionFolder full = SessionFolder.openForReading(session)) {
            open.journal().append(full.journal().events());
            for (String name : List.of("journal.db", "journal.db-wal")) {
                Files.copy(running.resolve(name), killed.resolve(name));
            }
        }
        assertThat(killed.resolve("journal.db-wal")).isNotEmptyFile();
        assertThat(program.run("pack", killed.toString(), archive.toString())).isZero();
        assertThat(program.run("unpack", archive.toString(), unpacked.toString()))
                .isZero();
        assertThat(notes(unpacked)).isEqualTo(notes(session));
        // Bytes 18 and 19 say how the file is written; 1 is without a write-ahead log (sqlite.org/fileformat.html).
        try (ZipFile zip = new ZipFile(archive.toFile())) {
            byte[] journal =
                    zip.getInputStream(zip.getEntry("killed/journal.db")).readAllBytes();
            assertThat(List.of(journal[18], journal[19])).containsExactly((byte) 1, (byte) 1);
        }
    }

    @Test
    void aSessionThatCannotBePackedGetsOneLine() throws Exception {
        try (SessionFolder open = SessionFolder.open(session, new SessionLocks())) {
            assertRefused("is open in another process", "pack", session.toString(), archive.toString());
            assertThat(open.path()).isEqualTo(session);
        }
        assertThat(archive).doesNotExist();
        assertRefused("no such file or folder", "pack", session.toString(), program.path("nowhere/session.zip"));
        assertRefused("name a file in it", "pack", session.toString(), folder.toString());
        assertRefused("there is no such folder", "pack", program.path("nowhere"), archive.toString());
        assertRefused("there is no such file", "unpack", program.path("nowhere.zip"));

        Files.writeString(archive, "mine");
        assertRefused("is there already, and nothing was written", "pack", session.toString(), archive.toString());
        assertThat(archive).hasContent("mine");
        assertThat(program.run("pack", session.toString(), archive.toString(), "--replace"))
                .isZero();
        assertRefused("is there already, and nothing was unpacked", "unpack", archive.toString(), session.toString());
    }

    @Test
    void anInterruptionAtAnyStepLeavesNothing() throws Exception {
        Environment here = StoredExamples.here(folder.resolve("machine"));
        Path out = Files.createDirectory(folder.resolve("out"));
        int steps = 0;
        while (!done(
                at(steps),
                stop -> new SessionPacking(here, p -> {}, stop).pack(session, out.resolve("session.zip"), false))) {
            assertThat(out).isEmptyDirectory();
            steps++;
        }
        assertThat(steps).isGreaterThan(10);
        assertThat(out.toFile().list()).containsExactly("session.zip");

        Path archived = out.resolve("session.zip");
        steps = 0;
        while (!done(
                at(steps), stop -> new SessionUnpacking(here, p -> {}, stop).unpack(archived, Optional.of(unpacked)))) {
            assertThat(unpacked).doesNotExist();
            steps++;
        }
        assertThat(steps).isGreaterThan(10);
        assertThat(notes(unpacked)).isEqualTo(notes(session));
    }

    @FunctionalInterface
    private interface Work {
        void run(Interruption stop) throws ProblemException;
    }

    /** Lets so many steps pass. */
    private static Interruption at(int steps) {
        int[] passed = {0};
        return new Interruption(() -> passed[0]++ >= steps);
    }

    private static boolean done(Interruption stop, Work work) throws ProblemException {
        try {
            work.run(stop);
            return true;
        } catch (OperationInterrupted e) {
            return false;
        }
    }

    private void pack() {
        assertThat(program.run("pack", session.toString(), archive.toString()))
                .as(program.err())
                .isZero();
    }

    private String notes(Path place) {
        assertThat(program.run("notes", place.toString(), "--json")).isZero();
        return program.out();
    }

    /** All files of a session's hand-off, as text that names no folder. */
    private Map<String, String> handOff(Path place) throws IOException {
        assertThat(program.run("handoff", place.toString())).as(program.err()).isZero();
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> written = Files.list(place.resolve("handoff"))) {
            for (Path file : written.toList()) {
                String text = Files.readString(file, StandardCharsets.ISO_8859_1);
                files.put(String.valueOf(file.getFileName()), text.replace(place.toString(), "FOLDER"));
            }
        }
        return files;
    }

    private void assertRefused(String why, String... arguments) {
        assertThat(program.run(arguments)).isEqualTo(2);
        assertThat(program.err().lines()).singleElement().asString().contains(why);
    }

    private static String text(ZipFile zip, String name) throws IOException {
        ZipEntry entry = zip.getEntry("2026-11-28-1000-a-lesson/" + name);
        return new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
    }

    private static String run(Path folder, String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(output).isZero();
        return output;
    }
}
