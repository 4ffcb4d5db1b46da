package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Camera and recorder files made by FFmpeg's own program, with the voice of the demo's reading. */
final class Films {
    static final Path DEMO =
            Path.of(System.getProperty("bookholder.home"), "demo-scripts").toAbsolutePath();

    /** The demo's reading. */
    static final String READING = DEMO.resolve("lesson-1.wav").toString();

    /** A moving test picture, as an input. */
    static final List<String> PICTURE = List.of("-f", "lavfi", "-i", "testsrc2=size=640x360:rate=25");

    private Films() {}

    /** The inputs of a film: the picture, and the reading from second {@code from} on. */
    static List<String> reading(double from, double seconds) {
        List<String> inputs = new ArrayList<>(PICTURE);
        inputs.addAll(List.of("-ss", Double.toString(from), "-t", Double.toString(seconds), "-i", READING));
        return inputs;
    }

    /** Makes a file of inputs; a name that ends in {@code .wav} has sound alone. */
    static Path make(Path file, List<String> inputs, String... options) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("ffmpeg", "-v", "error", "-y", "-nostdin"));
        command.addAll(inputs);
        if (!file.toString().endsWith(".wav")) {
            command.addAll(List.of("-c:v", "mpeg4", "-q:v", "20", "-shortest"));
        }
        command.addAll(List.of(options));
        command.add("file:" + file);
        Process process = new ProcessBuilder(command).inheritIO().start();
        assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
        assertThat(process.exitValue()).as(String.join(" ", command)).isZero();
        return file;
    }
}
