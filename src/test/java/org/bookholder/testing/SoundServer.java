package org.bookholder.testing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** A PulseAudio server of a test's own with one microphone, into which recordings can be played, and which can die. */
public final class SoundServer implements AutoCloseable {
    private static final long PATIENCE_SECONDS = 20;

    private final Path folder;
    private final Path socket;
    private Process server;

    private SoundServer(Path folder) throws IOException {
        this.folder = folder;
        // A socket's path must be short.
        this.socket = folder.resolve("s");
        this.server = launch();
    }

    /** Starts one that keeps its files in {@code folder}. */
    public static SoundServer in(Path folder) throws IOException {
        Needs.program("pulseaudio", "Debian package pulseaudio");
        Needs.program("paplay", "Debian package pulseaudio-utils");
        return new SoundServer(folder);
    }

    /** What a program needs in its environment to listen to this server's microphone. */
    public Map<String, String> environment() {
        return Map.of("PULSE_SERVER", "unix:" + socket);
    }

    /** Plays a WAV file into the microphone; ends it by {@link Process#destroy}. */
    public Process play(Path recording) throws IOException {
        ProcessBuilder builder = new ProcessBuilder("paplay", recording.toString());
        builder.environment().putAll(environment());
        return builder.redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    /** Pulls the microphone out. */
    public void die() throws IOException, InterruptedException {
        server.destroyForcibly().waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS);
        Files.deleteIfExists(socket);
    }

    /** Plugs it in again. */
    public void comeBack() throws IOException {
        server = launch();
    }

    @Override
    public void close() {
        server.destroyForcibly();
    }

    private Process launch() throws IOException {
        List<String> command = List.of(
                "pulseaudio",
                "-n",
                "--daemonize=no",
                "--exit-idle-time=-1",
                "--use-pid-file=no",
                "-L",
                "module-native-protocol-unix auth-anonymous=1 socket=" + socket,
                "-L",
                "module-null-sink sink_name=voice rate=48000 channels=1");
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().put("XDG_RUNTIME_DIR", folder.toString());
        builder.environment().put("HOME", folder.toString());
        Process started = builder.redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        while (!Files.exists(socket) && started.isAlive() && System.nanoTime() < end) {
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(20));
        }
        return started;
    }
}
