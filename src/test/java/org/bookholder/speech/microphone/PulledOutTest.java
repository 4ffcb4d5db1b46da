package org.bookholder.speech.microphone;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** On a sound server of its own, which is killed while a program of its own listens. */
final class PulledOutTest {
    @TempDir
    private Path folder;

    @Test
    @Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void aLostMicrophoneIsReportedAndClosingItDoesNotHang() throws InterruptedException, IOException {
        Needs.program("pulseaudio", "Debian package pulseaudio");
        Path socket = folder.resolve("socket");
        Process server = server(socket);
        Process program = null;
        try {
            while (!Files.exists(socket)) {
                assertThat(server.isAlive()).as("sound server").isTrue();
                LockSupport.parkNanos(20_000_000L);
            }
            program = program(socket);
            try (BufferedReader out = program.inputReader(StandardCharsets.UTF_8)) {
                assertThat(out.readLine()).isEqualTo("listening");
                server.destroyForcibly().waitFor();
                assertThat(out.readLine()).startsWith("gone: the microphone");
                assertThat(out.readLine()).isEqualTo("closed");
            }
            assertThat(program.waitFor(10, TimeUnit.SECONDS)).isTrue();
            assertThat(program.exitValue()).isZero();
        } finally {
            server.destroyForcibly();
            if (program != null) {
                program.destroyForcibly();
            }
        }
    }

    private Process server(Path socket) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(
                "pulseaudio",
                "-n",
                "--daemonize=no",
                "--exit-idle-time=-1",
                "--use-pid-file=no",
                "-L",
                "module-native-protocol-unix auth-anonymous=1 socket=" + socket,
                "-L",
                "module-null-sink sink_name=doomed rate=48000 channels=1");
        builder.environment().put("XDG_RUNTIME_DIR", folder.toString());
        builder.environment().put("HOME", folder.toString());
        return builder.redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    private static Process program(Path socket) throws IOException {
        String classPath = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        Path java = Path.of(System.getProperty("java.home"), "bin", "java");
        ProcessBuilder builder = new ProcessBuilder(java.toString(), "-cp", classPath, PulledOut.class.getName());
        builder.environment().put("PULSE_SERVER", "unix:" + socket);
        return builder.redirectError(ProcessBuilder.Redirect.DISCARD).start();
    }
}
