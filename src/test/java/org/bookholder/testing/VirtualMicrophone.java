package org.bookholder.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.bookholder.speech.microphone.Microphone;

/** A microphone of a test's own on the sound server that is there: a PulseAudio sink whose monitor is the microphone. */
public final class VirtualMicrophone implements AutoCloseable {
    private final String module;
    private boolean pulledOut;

    private VirtualMicrophone(String module) {
        this.module = module;
    }

    /** Plugs one in with so many channels, and waits until it is seen. What is played into {@code sink} is heard by it. */
    public static VirtualMicrophone plugIn(String sink, int channels) throws IOException {
        Needs.sound();
        String module = pactl(
                "load-module",
                "module-null-sink",
                "sink_name=" + sink,
                "rate=48000",
                "channels=" + channels,
                "sink_properties=device.description=" + sink);
        for (int i = 0; i < 1_000 && !Microphone.names().contains(name(sink)); i++) {
            LockSupport.parkNanos(5_000_000);
        }
        return new VirtualMicrophone(module);
    }

    /** What the microphone of a sink is called. */
    public static String name(String sink) {
        return "Monitor of " + sink;
    }

    /** Pulls it out, once. */
    @Override
    public void close() throws IOException {
        if (!pulledOut) {
            pulledOut = true;
            pactl("unload-module", module);
        }
    }

    private static String pactl(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of("pactl"));
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        try {
            assertThat(process.waitFor()).as(out).isZero();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException("interrupted while pactl ran");
        }
        return out;
    }
}
