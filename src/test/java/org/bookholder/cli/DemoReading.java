package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;

/** The demo's first lesson, heard from its recording in real time by the program in another process. */
final class DemoReading {
    static final Path LESSON = demo("lesson-1.md");

    private static final Path MODEL = Path.of(System.getProperty("bookholder.home"), "models/vosk-model-en-us");

    private DemoReading() {}

    /** Skips a test where there is no speech model. */
    static void needed() {
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
    }

    /** Gives a program whose home is {@code home} the speech model. */
    static void linkModel(Path home) throws IOException {
        Files.createDirectories(home.resolve("models"));
        Files.createSymbolicLink(home.resolve("models/vosk-model-en-us"), MODEL.toAbsolutePath());
    }

    /** Begins to read, without a window. */
    static ChildJvm start(String session) throws IOException {
        return start(LESSON, session);
    }

    /** The same with a copy of the script. */
    static ChildJvm start(Path lesson, String session) throws IOException {
        return ChildJvm.start(Main.class, arguments(lesson, session, "--no-window"));
    }

    /** The same with the user's data in {@code data}; what it prints as errors is read among its lines. */
    static ChildJvm startWithDataIn(Path data, String session) throws IOException {
        return ChildJvm.startWith(
                Map.of("XDG_DATA_HOME", data.toString()), Main.class, arguments(LESSON, session, "--no-window"));
    }

    /** The same as a program that a person runs in a terminal, whose temporary files go to {@code temporary}. */
    static ChildJvm startInFront(Path temporary, String session) throws IOException {
        return ChildJvm.startInFront(temporary, Main.class, arguments(LESSON, session, "--no-window"));
    }

    /** Begins to read with the window on an X display. */
    static ChildJvm startOn(String display, String session) throws IOException {
        return ChildJvm.startWith(
                Map.of("DISPLAY", display, "WAYLAND_DISPLAY", ""), Main.class, arguments(LESSON, session));
    }

    private static String[] arguments(Path lesson, String session, String... more) {
        List<String> arguments = new ArrayList<>(List.of(
                "read",
                lesson.toString(),
                "--audio",
                demo("lesson-1.wav").toString(),
                "--model",
                MODEL.toString(),
                "--session",
                session));
        arguments.addAll(List.of(more));
        return arguments.toArray(String[]::new);
    }

    /** What is to be read from the recording. */
    static Path recording() {
        return demo("lesson-1.wav");
    }

    private static Path demo(String name) {
        return Path.of(System.getProperty("bookholder.home"), "demo-scripts", name);
    }
}
