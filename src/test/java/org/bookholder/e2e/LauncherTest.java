package org.bookholder.e2e;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The launcher, with a script in the place of Java; {@link ProgramIT} runs the packaged one. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the shell script is the launcher of all other systems")
final class LauncherTest {
    @TempDir
    private Path folder;

    private Path told;

    @BeforeEach
    void unpack() throws IOException {
        String launcher = Files.readString(Path.of("src/main/launcher/bookholder"));
        script("bin/bookholder", launcher.replaceAll("@program\\.\\w+@", ""));
        told = folder.resolve("told");
    }

    @Test
    void javaNeverGetsAClosedStream() throws IOException, InterruptedException {
        // Said in a file, because the output itself is closed.
        script("java/bin/java", """
            #!/bin/sh
            [ "$1" = -version ] && exit
            for fd in 0 1 2; do [ -e /dev/fd/$fd ] && echo open || echo closed; done >"$TOLD" 2>/dev/null
            """);

        for (String closed : new String[] {"<&-", ">&-", "2>&-", "<&- >&- 2>&-"}) {
            run("\"$0\" " + closed);
            assertThat(Files.readAllLines(told)).as(closed).containsExactly("open", "open", "open");
        }
    }

    @Test
    void javaGetsALocaleThatSupportsAccents() throws IOException, InterruptedException {
        script("java/bin/java", "#!/bin/sh\n[ \"$1\" = -version ] && exit\nlocale charmap >\"$TOLD\"\n");

        for (String locale : new String[] {"LC_ALL=C", "LC_ALL=POSIX", "LANG=xx_YY.UTF-8", "LC_CTYPE=C", "LANG="}) {
            run("unset LC_ALL LC_CTYPE LANG; export " + locale + "; \"$0\"");
            assertThat(Files.readAllLines(told)).as(locale).containsExactly("UTF-8");
        }
    }

    @Test
    void theUsersFolderIsTheOneThatHomeNames() throws IOException, InterruptedException {
        script("java/bin/java", "#!/bin/sh\n[ \"$1\" = -version ] && exit\nprintf '%s\\n' \"$@\" >\"$TOLD\"\n");

        run("HOME='/home/of another'; export HOME; \"$0\"");
        assertThat(Files.readAllLines(told)).contains("-Duser.home=/home/of another");
        for (String home : new String[] {"HOME=relative", "HOME="}) {
            run(home + "; export HOME; \"$0\"");
            assertThat(Files.readAllLines(told)).as(home).noneMatch(option -> option.startsWith("-Duser.home"));
        }
        run("unset HOME; \"$0\"");
        assertThat(Files.readAllLines(told)).noneMatch(option -> option.startsWith("-Duser.home"));
    }

    private void run(String command) throws IOException, InterruptedException {
        ProcessBuilder shell = new ProcessBuilder(
                "sh", "-c", command, folder.resolve("bin/bookholder").toString());
        shell.environment().put("JAVA_HOME", folder.resolve("java").toString());
        shell.environment().put("TOLD", told.toString());
        Process process = shell.redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isZero();
    }

    private void script(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
    }
}
