package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class DialogProgramsTest {
    @TempDir
    private Path folder;

    private static boolean on(String system, Map<String, String> variables) {
        return DialogPrograms.on(system, name -> variables.getOrDefault(name, ""));
    }

    @Test
    void linuxNeedsADisplayAndAProgram() throws Exception {
        String path = "/none:" + folder;
        assertThat(on("Linux", Map.of("DISPLAY", ":1", "PATH", path))).isFalse();
        Files.setPosixFilePermissions(
                Files.createFile(folder.resolve("zenity")), PosixFilePermissions.fromString("rwx------"));
        assertThat(on("Linux", Map.of("DISPLAY", ":1", "PATH", path))).isTrue();
        assertThat(on("Linux", Map.of("WAYLAND_DISPLAY", "wayland-0", "PATH", path)))
                .isTrue();
        assertThat(on("Linux", Map.of("PATH", path))).isFalse();
        assertThat(on("Linux", Map.of("DISPLAY", ":1"))).isFalse();
    }

    @Test
    void anOpenDialogIsEndedAndNothingElse() throws IOException, InterruptedException {
        Path zenity = Files.copy(Path.of("/bin/sleep"), folder.resolve("zenity"), StandardCopyOption.COPY_ATTRIBUTES);
        Process dialog = new ProcessBuilder(zenity.toString(), "60").start();
        Process other = new ProcessBuilder("/bin/sleep", "60").start();
        try {
            LiveDesk.until(() ->
                    dialog.info().command().filter(zenity.toString()::equals).isPresent());
            DialogPrograms.endThoseOf(ProcessHandle.current());
            dialog.waitFor();
            assertThat(other.isAlive()).isTrue();
        } finally {
            dialog.destroyForcibly();
            other.destroyForcibly();
        }
    }

    @Test
    void theOtherSystemsHaveOne() {
        assertThat(on("Mac OS X", Map.of())).isTrue();
        assertThat(on("Windows 11", Map.of())).isTrue();
    }
}
