package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A mistake that the user can fix gives one plain line and exit status 2, and leaves nothing behind. */
final class BadInputTest {
    @TempDir
    private Path folder;

    private Program program;
    private String script;
    private String session;
    private String recording;

    @BeforeEach
    void writeScript() {
        program = new Program(folder);
        script = program.file("wheel.md", "Every wheel begins with its hub.\n");
        session = program.path("session");
        recording = program.recording("wheel.wav", 0.5);
    }

    @Test
    void noScript() {
        refuses("name the lesson's file", "read", "--audio", recording, "--no-window");
    }

    @Test
    void noSuchFile() {
        refuses("there is no such file", "read", program.path("none.md"), "--audio", recording, "--session", session);
    }

    @Test
    void aScriptThatIsNotText() throws IOException {
        Path zip = Files.write(folder.resolve("wheel.zip"), new byte[] {'P', 'K', 3, 4, 0, 0, (byte) 0xff, 0});
        refuses(
                "this is a document or an archive, not text",
                "read",
                zip.toString(),
                "--audio",
                recording,
                "--session",
                session);
    }

    @ParameterizedTest
    @CsvSource({
        "0, pace 0 is out of range",
        "5000, pace 5000 is out of range",
        "brisk, pace 'brisk' is not a whole number",
        "'a: b', the front matter can't be read"
    })
    void invalidFrontMatter(String pace, String message) {
        String bad = program.file("bad.md", "---\ntitle: Hub\npace: " + pace + "\n---\nEvery wheel has one.\n");
        refuses("bad.md:3: " + message, "read", bad, "--audio", recording, "--session", session);
    }

    @Test
    void anEmptyScript() {
        refuses("empty.md", "read", program.file("empty.md", ""), "--audio", recording, "--session", session);
    }

    @Test
    void aLineNumberBeyondTheScript() {
        refuses("there is no line 2", "read", script, "--from", "2", "--audio", recording, "--session", session);
    }

    @Test
    void noSuchRecording() {
        refuses("none.wav", "read", script, "--audio", program.path("none.wav"), "--session", session);
    }

    @Test
    void aFileThatIsNotARecording() {
        refuses("wheel.md", "read", script, "--audio", script, "--session", session);
    }

    @Test
    void noMicrophone() {
        refuses("there is no microphone", "read", script, "--no-window", "--session", session);
    }

    @Test
    void aMissingEmptyOrUnsuitableModel() throws IOException {
        program.equipment.hearsForReal();
        Path model = folder.resolve("model");
        refusesModel("there is no model folder", model);
        Files.createDirectory(model);
        refusesModel("this is not a speech model: it has no am", model);
        Files.createDirectories(model.resolve("ivector"));
        program.file("model/model.bin", "something else");
        refusesModel("this is not a speech model: it has no am", model);
    }

    @Test
    void aRecordingAndAMicrophone() {
        refuses("takes the microphone's place", "read", script, "--audio", recording, "--microphone", "desk");
    }

    @Test
    void unpacedWithoutARecording() {
        refuses("--unpaced", "read", script, "--no-window", "--unpaced");
        refuses("give a number from 20 to 2000", "read", script, "--no-window", "--distance", "-5");
    }

    @Test
    void anUnknownOption() {
        refuses("--loud", "read", script, "--loud");
    }

    @Test
    void aValueThatIsNotANumber() {
        refuses("--words", "read", script, "--words", "many");
    }

    @Test
    void aNumberOutOfRange() {
        refuses("give a number from 3 to 12", "read", script, "--words", "40");
    }

    @Test
    void anUnknownWayOfMovingTheText() {
        refuses("--move", "read", script, "--move", "tide");
    }

    @Test
    void anUnknownCommand() {
        refuses("raed", "raed", script);
    }

    @Test
    void anImpossibleSessionFolder() {
        refuses("wheel.md", "read", script, "--audio", recording, "--session", script + "/session");
    }

    /** A place where even the super-user cannot write. */
    @Test
    void aSessionFolderThatCannotBeWritten() {
        Needs.file(Path.of("/proc/self"), "Linux");
        refuses("/proc/session", "read", script, "--audio", recording, "--no-window", "--session", "/proc/session");
    }

    @Test
    void aFolderWithOtherContents() throws IOException {
        Files.createDirectories(folder.resolve("session"));
        program.file("session/letter.txt", "Dear aunt");
        refuses("holds no session", reading());
        assertThat(folder.resolve("session")).isDirectoryContaining("glob:**letter.txt");
    }

    @Test
    void aSessionThatIsOpenElsewhere() throws ProblemException {
        try (SessionFolder open = SessionFolder.create(folder.resolve("session"), new SessionLocks())) {
            refuses(open.path().toString(), reading());
        }
    }

    @Test
    void aSessionOfANewerVersion() throws SQLException {
        assertThat(program.run(reading())).isZero();
        Path journal = folder.resolve("session/journal.db");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + journal);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA user_version = 9999");
        }
        refuses("newer", reading());
        refuses("newer", "notes", session);
    }

    @Test
    void aSessionOfAnotherLesson() {
        assertThat(program.run(reading())).isZero();
        String[] other = reading();
        other[1] = program.file("rim.md", "Every wheel begins with its rim.\n");
        refuses("begin a new session", other);
    }

    @Test
    void notesOfAFolderThatIsNotASession() {
        refuses("there is no such folder", "notes", program.path("none"));
        refuses("holds no session", "notes", folder.toString());
    }

    @Test
    void notesOfASessionInWhichNothingWasRead() throws ProblemException {
        SessionFolder.create(folder.resolve("session"), new SessionLocks()).close();
        refuses("nothing was read", "notes", session);
    }

    /** What a kill leaves before the journal exists. */
    @Test
    void aSessionThatNeverBeganIsEmpty() throws IOException {
        Files.createDirectories(folder.resolve("session"));
        Files.write(folder.resolve("session/journal.db"), new byte[0]);
        refuses("nothing was read", "notes", session);
        assertThat(program.run("sessions", folder.toString())).isZero();
        assertThat(program.out()).contains("empty").doesNotContain("unreadable");
        assertThat(program.run(reading())).isZero();
    }

    @Test
    void twoFormatsOfNotesAtOnce() {
        refuses("--json", "notes", session, "--json", "--trace");
    }

    @Test
    void aDemoWithoutItsLesson() {
        refuses("the demo's lesson is missing", "demo", "--no-window");
    }

    private String[] reading() {
        return new String[] {"read", script, "--audio", recording, "--no-window", "--unpaced", "--session", session};
    }

    private void refusesModel(String message, Path model) {
        refuses(message, "read", script, "--audio", recording, "--session", session, "--model", model.toString());
        assertThat(folder.resolve("session")).doesNotExist();
    }

    private void refuses(String message, String... arguments) {
        assertThat(program.run(arguments)).isEqualTo(2);
        assertThat(program.err()).startsWith("bookholder: ").contains(message).hasLineCount(1);
        assertThat(program.err()).doesNotContain("Exception", "\tat ");
        assertThat(program.out()).doesNotContain("Pickup list");
    }
}
