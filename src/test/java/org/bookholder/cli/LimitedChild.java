package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.Spoken;

/** Reads a recording in a process of its own, in which no file may grow beyond a limit. */
final class LimitedChild {
    private LimitedChild() {}

    /** Reads {@code wheel.md} to {@code wheel.wav} in the folder given, and hears every line of it. */
    public static void main(String[] arguments) throws IOException {
        // A second place in the temporary folder is not left behind either.
        System.setProperty("java.io.tmpdir", arguments[0]);
        Program program = new Program(Path.of(arguments[0]));
        Spoken spoken = new Spoken(1);
        for (String line : Files.readAllLines(Path.of(program.path("wheel.md")))) {
            spoken.says(line.toLowerCase(Locale.ROOT).replace(".", ""));
        }
        program.equipment.hears(new FakeEars(spoken.hypotheses()));
        int status = program.read(program.path("wheel.md"), program.path("wheel.wav"), program.path("session"));
        System.out.print(program.out());
        System.out.print(program.err());
        System.out.println("status " + status);
    }
}
