package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** The program from script to notes on a disk of memory that is too small for the demo's reading, with the real recogniser. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "small disks are mounted with unshare and tmpfs of Linux")
@Timeout(300)
@Execution(ExecutionMode.CONCURRENT)
final class SmallDiskProgramTest {
    @TempDir
    private Path folder;

    @Test
    void nothingOfAReadingIsLostOnADiskThatIsTooSmall() throws IOException, InterruptedException {
        List<String> lines = runOnDisk("800k", "whole");
        assertThat(lines)
                .contains("read: 2", "notes while full: 0", "notes: 0", "exit status 0")
                .anyMatch(line -> line.matches(
                        ".* s of sound .*could not be saved in the session's folder \\(.*: the disk is full\\)"
                                + " and are kept in .*/bookholder-overflow-\\d+; when there is room again.*"))
                .anyMatch(line -> line.contains("and cannot be taken in now"))
                .anyMatch(line -> line.contains("are in the session now"));
        assertThat(folder.resolve("take.wav")).hasSameBinaryContentAs(folder.resolve("undisturbed/take-001.wav"));
        JsonNode notes =
                new ObjectMapper().readTree(folder.resolve("notes.json").toFile());
        JsonNode undisturbed =
                new ObjectMapper().readTree(folder.resolve("undisturbed.json").toFile());
        assertThat(summary(notes)).isEqualTo(summary(undisturbed)).hasSizeGreaterThan(15);
        assertThat(summary(notes))
                .filteredOn(line -> line.startsWith("clean"))
                .as("lines read before the disk was full, and after")
                .hasSizeGreaterThan(7);
        assertThat(folder.resolve("data/overflow")).isEmptyDirectory();
    }

    /** Not even a reading that nobody can end in order any more: what was refused is elsewhere a second later. */
    @Test
    void aKillWhileTheDiskIsFullLosesNoLineThatWasShown() throws IOException, InterruptedException {
        Path data = Files.createDirectories(folder.resolve("others/bookholder"));
        Files.createSymbolicLink(folder.resolve("data"), data);
        List<String> lines = runOnDisk("700k", "kill");
        assertThat(lines)
                .contains("notes: 0", "exit status 0")
                .anyMatch(line -> line.contains("are in the session now"));
        byte[] whole = Files.readAllBytes(DemoReading.recording());
        byte[] take = Files.readAllBytes(folder.resolve("take.wav"));
        assertThat(take.length).as("more than the disk had room for").isGreaterThan(700 * 1024);
        assertThat(Arrays.equals(take, 44, take.length, whole, 44, take.length)).isTrue();
        List<String> clean =
                lines.stream().filter(line -> line.startsWith("clean: ")).toList();
        assertThat(clean).hasSize(4);
        JsonNode notes =
                new ObjectMapper().readTree(folder.resolve("notes.json").toFile());
        for (JsonNode line : notes.path("lines")) {
            String shown = "clean: " + line.path("text").asText();
            assertThat(line.path("outcome").asText())
                    .matches(outcome -> outcome.equals("clean") || !clean.contains(shown), shown);
        }
        assertThat(data.resolve("overflow")).isEmptyDirectory();
    }

    private List<String> runOnDisk(String size, String what) throws IOException, InterruptedException {
        Needs.mounts();
        DemoReading.needed();
        Path disk = Files.createDirectories(folder.resolve("disk"));
        String mount = "mount -t tmpfs -o size=" + size + " none \"$0\" && exec \"$@\"";
        try (ChildJvm child = ChildJvm.startBy(
                List.of("unshare", "-rm", "sh", "-c", mount, disk.toString()),
                Child.class,
                folder.toString(),
                disk.toString(),
                System.getProperty("bookholder.home"),
                what)) {
            return child.untilItEnds();
        }
    }

    /** Outcomes, attempts and asides; word times differ a little from run to run, as the recogniser adds noise of its own. */
    private static List<String> summary(JsonNode notes) {
        List<String> summary = new ArrayList<>();
        for (JsonNode line : notes.path("lines")) {
            summary.add(
                    line.path("outcome").asText() + " " + line.path("attempts").size());
        }
        for (JsonNode aside : notes.path("asides")) {
            summary.add("aside: " + aside.path("said").asText());
        }
        return summary;
    }

    /** Reads on the disk, looks at the notes, makes room and looks again; then reads where there is room. */
    static final class Child {
        /** So much of the demo's reading that the disk cannot hold more than half of it. */
        private static final int SECONDS = 50;

        private final Program program;

        private Child(Path folder) {
            program = new Program(folder);
            program.equipment.hearsForReal();
        }

        /** Arguments: the folder of the test, the disk, the program's home, {@code whole} or {@code kill}. */
        public static void main(String[] args) throws IOException, InterruptedException, ProblemException {
            System.setProperty("bookholder.home", args[2]);
            Path folder = Path.of(args[0]);
            Path disk = Path.of(args[1]);
            Path session = disk.resolve("session");
            DemoReading.linkModel(folder);
            Child child = new Child(folder);
            if (args[3].equals("kill")) {
                readAndKill(folder, session);
                child.makeRoom(folder, disk, session);
            } else {
                Wav.write(folder.resolve("beginning.wav"), 16_000, Wav.demo(SECONDS));
                child.read("read", session);
                child.run("notes while full", "notes", session.toString());
                child.makeRoom(folder, disk, session);
                Path undisturbed = folder.resolve("undisturbed");
                child.read("read undisturbed", undisturbed);
                child.run("notes undisturbed", "notes", undisturbed.toString(), "--json");
                Files.writeString(folder.resolve("undisturbed.json"), child.program.out());
            }
        }

        /** Kills the program in another process after five more lines were shown as clean on the full disk. */
        private static void readAndKill(Path folder, Path session) throws IOException, InterruptedException {
            try (ChildJvm reader = DemoReading.startWithDataIn(folder.resolve("others"), session.toString())) {
                reader.readTo("not being saved");
                for (int i = 0; i < 4; i++) {
                    System.out.println("clean: " + reader.readTo("clean").replaceFirst(".*clean\\s+", ""));
                }
                // More than a second has passed when the next line is shown: the second place has those before it.
                reader.readTo("clean");
                reader.kill();
            }
        }

        private void makeRoom(Path folder, Path disk, Path session) throws IOException, InterruptedException {
            new ProcessBuilder("mount", "-o", "remount,size=20M", disk.toString())
                    .inheritIO()
                    .start()
                    .waitFor();
            run("notes", "notes", session.toString(), "--json");
            Files.writeString(folder.resolve("notes.json"), program.out());
            Files.copy(session.resolve("take-001.wav"), folder.resolve("take.wav"));
        }

        private void read(String what, Path session) {
            run(
                    what,
                    "read",
                    DemoReading.LESSON.toString(),
                    "--audio",
                    program.path("beginning.wav"),
                    "--no-window",
                    "--unpaced",
                    "--session",
                    session.toString());
        }

        private void run(String what, String... arguments) {
            int status = program.run(arguments);
            System.out.print(program.err());
            System.out.println(what + ": " + status);
        }
    }
}
