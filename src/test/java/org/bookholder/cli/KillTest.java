package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Folders;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** A take that is read in real time by another process, which is then ended from outside. */
@Timeout(180)
@Execution(ExecutionMode.CONCURRENT)
final class KillTest {
    @TempDir
    private Path folder;

    private Program program;
    private String session;

    @BeforeEach
    void find() {
        DemoReading.needed();
        program = new Program(folder);
        program.equipment.hearsForReal();
        session = program.path("session");
    }

    @Test
    void aKilledTakeIsListedReadAndContinued() throws IOException, InterruptedException {
        try (ChildJvm child = DemoReading.start(session)) {
            readUntilALineIsSaved(child);
            child.kill();
        }
        assertThat(program.run("sessions", folder.toString())).isZero();
        assertThat(program.out()).contains("broken off", "1 take", "Reading a bent wheel");

        // Without a recogniser, the known results are shown.
        assertThat(notes().at("/lines/0/outcome").asText()).isEqualTo("clean");
        assertThat(program.err())
                .contains("take 1 was broken off", "it cannot be listened to again", "no model folder");

        DemoReading.linkModel(folder);
        JsonNode before = notes();
        assertThat(program.err()).contains("take 1 was broken off; listening again to what was recorded");
        assertThat(before.at("/lines/0/outcome").asText()).isEqualTo("clean");
        assertThat(notes()).isEqualTo(before);
        assertThat(program.err()).isEmpty();

        assertThat(goOn(DemoReading.LESSON)).isZero();
        JsonNode after = notes();
        assertThat(after.at("/lines/0")).isEqualTo(before.at("/lines/0"));
        assertThat(after.path("takes")).hasSize(2);
        // The broken take ends where its recording does, and the next one begins there.
        double heard = after.at("/takes/0/end").asDouble();
        assertThat(heard).isGreaterThanOrEqualTo(before.at("/lines/0/best/end").asDouble());
        assertThat(after.at("/takes/1/start").asDouble()).isEqualTo(heard);
        assertThat(folder.resolve("session/take-001.wav").toFile().length()).isGreaterThan((long) (heard * 32_000));
    }

    @Test
    void aScriptThatWasMendedAfterTheKillGoesOnWithItsNotes() throws IOException, InterruptedException {
        Path script = Files.copy(DemoReading.LESSON, folder.resolve("lesson.md"));
        try (ChildJvm child = DemoReading.start(script, session)) {
            readUntilALineIsSaved(child);
            child.kill();
        }
        String hello = "Hello, and welcome to the workshop.";
        String text = Files.readString(script);
        Files.writeString(
                script, text.replace(hello, "Good to see you.\n\n" + hello).replace("yard sale", "flea market"));
        DemoReading.linkModel(folder);
        assertThat(goOn(script)).isZero();
        assertThat(program.err())
                .contains(
                        "take 1 was broken off; listening again to what was recorded",
                        "the script was changed since; 18 of its 19 lines keep their notes, and 2 lines are new");
        JsonNode mended = notes();
        assertThat(mended.path("lines")).hasSize(20);
        assertThat(mended.at("/lines/0/text").asText()).isEqualTo("Good to see you.");
        assertThat(mended.at("/lines/0/attempts")).isEmpty();
        assertThat(mended.at("/lines/1/text").asText()).isEqualTo(hello);
        assertThat(mended.at("/lines/1/outcome").asText()).isEqualTo("clean");
        assertThat(mended.at("/lines/1/best/take").asInt()).isEqualTo(1);
        assertThat(mended.at("/lines/3/text").asText()).contains("flea market");
        assertThat(mended.at("/lines/3/attempts")).isEmpty();

        assertThat(goOn(script)).isZero();
        assertThat(program.err()).doesNotContain("was changed");
        assertThat(notes().at("/lines/1/best")).isEqualTo(mended.at("/lines/1/best"));
        program.types("\n");
        assertThat(program.run("desk", session)).isZero();

        String other = program.file("other.md", "Every wheel ends with its rim.\n");
        assertThat(goOn(Path.of(other))).isEqualTo(2);
        assertThat(program.err()).contains("the session was begun with another script than " + other, "(0 of its 20 ");
    }

    private int goOn(Path script) {
        String more = program.recording("more.wav", 1);
        return program.read(script.toString(), more, session);
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "a folder with open files cannot be deleted on Windows")
    void aTakeWhoseFolderIsDeletedGoesOnAndComesBackWhole() throws IOException, InterruptedException {
        Path data = Files.createDirectories(folder.resolve("others/bookholder"));
        Files.createSymbolicLink(folder.resolve("data"), data);
        List<String> rest;
        try (ChildJvm child = DemoReading.startWithDataIn(folder.resolve("others"), session)) {
            readUntilALineIsClean(child);
            Folders.delete(Path.of(session));
            child.readTo("is gone");
            child.readTo("clean");
            rest = child.terminate();
        }
        assertThat(Path.of(session)).doesNotExist();
        assertThat(rest)
                .contains("Pickup list: Reading a bent wheel")
                .anyMatch(line -> line.matches(
                        "bookholder: \\d+ s of sound and \\d+ notes could not be saved in the session's folder .*"));

        DemoReading.linkModel(folder);
        JsonNode notes = notes();
        assertThat(program.err()).contains("are in the session now");
        assertThat(notes.at("/lines/0/outcome").asText()).isEqualTo("clean");
        assertThat(notes.at("/lines/1/outcome").asText()).isEqualTo("clean");
        byte[] whole = Files.readAllBytes(DemoReading.recording());
        byte[] take = Files.readAllBytes(Path.of(session, "take-001.wav"));
        assertThat(take.length)
                .isGreaterThan((int) (32_000 * notes.at("/lines/1/best/end").asDouble()));
        assertThat(Arrays.equals(take, 44, take.length, whole, 44, take.length))
                .as("the recording's sound from its first sample on")
                .isTrue();
        assertThat(data.resolve("overflow")).isEmptyDirectory();
    }

    @Test
    void anInterruptedTakeEndsInOrder() throws IOException, InterruptedException {
        List<String> rest;
        try (ChildJvm child = DemoReading.start(session)) {
            readUntilALineIsClean(child);
            rest = child.terminate();
        }
        assertThat(rest).contains("Pickup list: Reading a bent wheel");
        program.run("sessions", folder.toString());
        assertThat(program.out()).contains("finished");
        assertThat(notes().at("/lines/0/outcome").asText()).isEqualTo("clean");
    }

    @Test
    void aTakeWhoseTerminalIsClosedEndsInOrder() throws IOException, InterruptedException {
        try (ChildJvm child = DemoReading.startInFront(folder, session)) {
            readUntilALineIsClean(child);
            // 128 and the signal's number, as with shells.
            assertThat(child.hangUp()).contains("Pickup list: Reading a bent wheel", "exit status 129");
        }
        assertThat(folder.resolve("session/journal.db-wal")).doesNotExist();
        assertThat(notes().at("/lines/0/outcome").asText()).isEqualTo("clean");
        assertThat(program.err()).isEmpty();
    }

    private static void readUntilALineIsClean(ChildJvm child) throws IOException {
        assertThat(child.readTo("clean")).contains("Hello, and welcome to the workshop.");
    }

    /** A line is printed as soon as it is judged and saved a moment later, so reading on until further lines gives it time. */
    private void readUntilALineIsSaved(ChildJvm child) throws IOException {
        readUntilALineIsClean(child);
        while (!notes().at("/lines/0/outcome").asText().equals("clean")) {
            child.readTo("clean");
        }
    }

    private JsonNode notes() throws IOException {
        assertThat(program.run("notes", session, "--json")).isZero();
        return new ObjectMapper().readTree(program.out());
    }
}
