package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.bookholder.files.RunFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Where the libraries unpack their native code. Each test runs its own process, because libraries choose the folder once. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "folders without execution are mounted with unshare of Linux")
final class NativeFoldersTest {
    @TempDir
    private Path folder;

    @Test
    void nothingOfThemLiesInTheSharedFolderAndNothingIsLeftAtTheEnd() throws IOException, InterruptedException {
        Path shared = Files.createDirectory(folder.resolve("shared"));
        try (ChildJvm child = start(shared, Unpacking.class)) {
            Path run = Path.of(child.readTo("run: ").substring(5));
            assertThat(child.readTo("JNA's: ")).startsWith("JNA's: " + run);
            child.readTo("loaded");
            assertThat(run.getParent()).isEqualTo(folder.resolve("cache/bookholder"));
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(run)))
                    .isEqualTo("rwx------");
            assertThat(names(run)).anyMatch(name -> name.contains("sqlite")).anyMatch(name -> name.contains("lwjgl"));
            // Java's own file for its performance counters may be there.
            assertThat(names(shared)).noneMatch(name -> name.matches(".*(sqlite|jna|lwjgl|vosk|javacpp|bookholder).*"));
            assertThat(child.end()).isZero();
            assertThat(run).doesNotExist();
        }
    }

    @Test
    void aKilledRunsFoldersAreDeletedByTheNextRunButNotThoseOfALivingOne() throws IOException, InterruptedException {
        try (ChildJvm killed = start(folder, Unpacking.class);
                ChildJvm living = start(folder, Unpacking.class)) {
            Path left = Path.of(killed.readTo("run: ").substring(5));
            killed.readTo("loaded");
            Path held = Path.of(living.readTo("run: ").substring(5));
            living.readTo("loaded");
            killed.kill();
            assertThat(left).exists();
            try (ChildJvm next = start(folder, Unpacking.class)) {
                next.readTo("loaded");
                assertThat(left).doesNotExist();
                assertThat(names(held)).anyMatch(name -> name.contains("sqlite"));
            }
        }
    }

    @Test
    void foldersFromWhichNoProgramRunsAreNamed() throws IOException, InterruptedException {
        assertThat(runOnTmpfs("noexec,size=100M"))
                .containsExactly(
                        "bookholder: " + folder + "/full: the program's own libraries cannot be unpacked: " + folder
                                + "/full/bookholder does not let programs run (it is mounted noexec), and " + folder
                                + "/full does not let programs run (it is mounted noexec); free some space, or set"
                                + " XDG_CACHE_HOME to a folder with room from which programs may run",
                        "exit status 2");
    }

    @Test
    void foldersWithoutRoomAreNamed() throws IOException, InterruptedException {
        assertThat(runOnTmpfs("size=1M"))
                .containsExactly(
                        "bookholder: " + folder + "/full: the program's own libraries cannot be unpacked: " + folder
                                + "/full/bookholder has no room (48 MB are needed), and " + folder
                                + "/full has no room (48 MB are needed); free some space, or set"
                                + " XDG_CACHE_HOME to a folder with room from which programs may run",
                        "exit status 2");
    }

    /** Runs the program with its cache and its temporary files on a file system of memory, mounted with these options. */
    private List<String> runOnTmpfs(String options) throws IOException, InterruptedException {
        Needs.mounts();
        Path full = Files.createDirectory(folder.resolve("full"));
        String mount = "mount -t tmpfs -o " + options + " none " + full + " && exec \"$@\"";
        List<String> command = new ArrayList<>(List.of("unshare", "-rm", "sh", "-c", mount, "sh"));
        command.addAll(List.of("env", "XDG_CACHE_HOME=" + full, "JAVA_TOOL_OPTIONS=-Djava.io.tmpdir=" + full));
        try (ChildJvm child = ChildJvm.startBy(command, Main.class, "limits")) {
            List<String> lines = child.untilItEnds();
            lines.removeIf(line -> line.startsWith("Picked up JAVA_TOOL_OPTIONS"));
            return lines;
        }
    }

    private ChildJvm start(Path temporary, Class<?> main) throws IOException {
        return ChildJvm.startBy(
                List.of(
                        "env",
                        "XDG_CACHE_HOME=" + folder.resolve("cache"),
                        "TMPDIR=" + temporary,
                        "JAVA_TOOL_OPTIONS=-Djava.io.tmpdir=" + temporary),
                main);
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.map(file -> String.valueOf(file.getFileName())).toList();
        }
    }

    /** Unpacks and loads the native code of two libraries, and ends when its input does. */
    static final class Unpacking {
        private Unpacking() {}

        public static void main(String[] args) throws ProblemException, IOException, ReflectiveOperationException {
            try (RunFolder run = NativeFolders.prepare(Machine.cacheFolder(), Machine.temporaryFolder())) {
                System.out.println("run: " + run.path());
                // By name: in a class that names them they might be loaded before the folders are set.
                Class.forName("org.sqlite.SQLiteJDBCLoader")
                        .getMethod("initialize")
                        .invoke(null);
                Class.forName("org.vosk.LibVosk");
                Class.forName("org.lwjgl.system.Library");
                // JNA deletes its files as soon as they are loaded.
                try (Stream<String> mapped = Files.lines(Path.of("/proc/self/maps"))) {
                    String jna = mapped.filter(line -> line.contains("jna"))
                            .findFirst()
                            .orElse("");
                    System.out.println("JNA's: " + jna.substring(jna.indexOf('/')));
                }
                System.out.println("loaded");
                while (System.in.read() >= 0) {
                    // Until the test has seen enough.
                }
            }
        }
    }
}
