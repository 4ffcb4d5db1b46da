package org.bookholder.e2e;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.bookholder.testing.Needs;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Runs the program as it was packaged. */
final class ProgramIT {
    private static final Path PROGRAM = Path.of(System.getProperty("bookholder.program"));

    @TempDir
    private Path folder;

    private record Ended(int exit, String out, String err) {}

    @Test
    void shipsItsModelItsDemoItsNativesAndItsLicences() throws IOException {
        assertThat(List.of("LICENSE", "NOTICE", "bin/bookholder.bat", "models/vosk-model-en-us/am/final.mdl"))
                .allSatisfy(name -> assertThat(PROGRAM.resolve(name)).isNotEmptyFile());
        try (Stream<Path> jars = Files.list(PROGRAM.resolve("lib"))) {
            assertThat(jars.map(jar -> jar.getFileName().toString()).toList())
                    .anyMatch(name -> name.matches("lwjgl-glfw-.*-natives-.*\\.jar"))
                    .noneMatch(name -> name.contains("junit") || name.endsWith(".aar"));
        }
    }

    @Test
    void refusesAJavaThatIsTooOld() throws IOException, InterruptedException {
        Path home = java("echo 'java version \"1.8.0_402\"' >&2");

        Ended ended = run(Map.of("JAVA_HOME", home.toString()), launcher(), "--version");

        assertThat(ended.exit()).isEqualTo(2);
        assertThat(ended.err())
                .contains("is too old", "Install Java 17 or newer")
                .hasLineCount(1);
    }

    /** Java 24 and later warn of native libraries and of sun.misc.Unsafe unless told otherwise (JEP 472, JEP 498). */
    @Test
    void leavesALaterJavaNothingToWarnOf() throws IOException, InterruptedException {
        Path home = java("[ \"$1\" = -version ] && echo 'openjdk version \"25.0.1\"' >&2 || echo \"$@\"");

        Ended ended = run(Map.of("JAVA_HOME", home.toString()), launcher(), "--version");

        assertThat(ended.out())
                .contains("--enable-native-access=ALL-UNNAMED", "-Dorg.lwjgl.system.memoryBackend=ffm")
                .endsWith(" --version\n");
    }

    /** A folder with a bin/java that is this script. */
    private Path java(String script) throws IOException {
        Path home = Files.createDirectories(folder.resolve("java/bin")).getParent();
        Path java = Files.writeString(home.resolve("bin/java"), "#!/bin/sh\n" + script + "\n");
        Files.setPosixFilePermissions(java, PosixFilePermissions.fromString("rwxr-xr-x"));
        return home;
    }

    @Test
    void saysWhenJavaHomeHoldsNoJava() throws IOException, InterruptedException {
        Ended ended = run(Map.of("JAVA_HOME", folder.toString()), launcher(), "--version");

        assertThat(ended.exit()).isEqualTo(2);
        assertThat(ended.err()).contains(folder.toString(), "no bin/java").hasLineCount(1);
    }

    @Test
    void runsThroughASymbolicLinkInAFolderWithSpaces() throws IOException, InterruptedException {
        Path there = Files.createDirectories(folder.resolve("a folder"));
        Path link = Files.createSymbolicLink(there.resolve("held"), launcher().toAbsolutePath());

        Ended ended = run(Map.of(), link, "--version");

        assertThat(ended.exit()).isZero();
        assertThat(ended.out()).startsWith("Bookholder ").doesNotContain("development");
        assertThat(ended.err()).isEmpty();
    }

    @Test
    void namesItsCommandsInItsHelp() throws IOException, InterruptedException {
        Ended ended = run(Map.of(), launcher(), "--help");

        assertThat(ended.exit()).isZero();
        assertThat(ended.out()).contains("read", "notes", "demo");
    }

    @Test
    void saysInOneLineThatAScriptIsMissing() throws IOException, InterruptedException {
        Ended ended = run(Map.of(), launcher(), "read", "no-such-lesson.md", "--no-window");

        assertThat(ended.exit()).isEqualTo(2);
        assertThat(ended.err()).contains("no-such-lesson.md").hasLineCount(1);
    }

    @Test
    void theDemosPickupListIsExactlyRight() throws IOException, InterruptedException {
        Path session = folder.resolve("session");

        Ended demo = run(Map.of(), launcher(), "demo", "--no-window", "--unpaced", "--session", session.toString());
        Ended notes = run(Map.of(), launcher(), "notes", session.toString(), "--json");

        assertThat(demo.exit()).as(demo.err()).isZero();
        assertThat(demo.err()).isEmpty();
        JsonNode found = new ObjectMapper().readTree(notes.out());
        Map<Integer, String> outcomes = new TreeMap<>();
        found.get("lines").forEach(line -> outcomes.put(line.get("line").asInt(), outcome(line)));
        outcomes.values().removeIf("clean"::equals);
        assertThat(outcomes).isEqualTo(Map.of(8, "skipped", 13, "misread", 17, "incomplete"));
        assertThat(found.get("lines").get(12).get("words").findValuesAsText("word"))
                .anyMatch(w -> w.contains("fingernail"));
        assertThat(found.get("lines").get(10).get("attempts")).hasSize(2);
        assertThat(found.get("asides")).hasSize(1);
    }

    /** A service, or a login through su, has no XDG_RUNTIME_DIR: Wayland's library would say so by itself. */
    @Test
    void aDisplayThatIsMissingIsSaidInOurWordsOnly() throws IOException, InterruptedException {
        Path script = Files.writeString(folder.resolve("lesson.md"), "One line.\n");
        Path sound = Wav.write(folder.resolve("silence.wav"), 16_000, new short[16_000]);

        Ended read = run(
                Map.of("DISPLAY", "", "XDG_RUNTIME_DIR", "", "WAYLAND_DISPLAY", ""),
                launcher(),
                "read",
                script.toString(),
                "--audio",
                sound.toString(),
                "--session",
                folder.resolve("session").toString());

        assertThat(read.exit()).as(read.err()).isZero();
        assertThat(read.err())
                .startsWith("bookholder: reading in the terminal, without a window")
                .hasLineCount(1);
    }

    /** Without a sound server ALSA is asked, whose library would print several lines; by these settings it has no device. */
    @Test
    void aMicrophoneThatIsMissingIsSaidInOurWordsOnly() throws IOException, InterruptedException {
        Path script = Files.writeString(folder.resolve("lesson.md"), "One line.\n");
        Path noDevices = Files.writeString(folder.resolve("asound.conf"), "");

        Ended read = run(
                Map.of(
                        "PULSE_SERVER", "unix:" + folder.resolve("nothing"),
                        "XDG_RUNTIME_DIR", folder.toString(),
                        "ALSA_CONFIG_PATH", noDevices.toString()),
                launcher(),
                "read",
                script.toString(),
                "--no-window");

        assertThat(read.exit()).isEqualTo(2);
        assertThat(read.err())
                .matches("bookholder: [^:]+: no microphone can be opened; [^:]+\\R")
                .hasLineCount(1);
    }

    private static String outcome(JsonNode line) {
        return line.get("outcome").asText();
    }

    private static Path launcher() {
        Needs.that(Files.isExecutable(Path.of("/bin/sh")), "there is no /bin/sh for the launcher to run in");
        return PROGRAM.resolve("bin/bookholder");
    }

    private Ended run(Map<String, String> environment, Path program, String... arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(program.toString()));
        command.addAll(List.of(arguments));
        Path out = folder.resolve("out");
        Path err = folder.resolve("err");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile());
        builder.environment().putAll(environment);
        builder.environment().values().removeIf(String::isEmpty);
        Process process = builder.start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        return new Ended(
                process.exitValue(),
                Files.readString(out, StandardCharsets.UTF_8),
                Files.readString(err, StandardCharsets.UTF_8));
    }
}
