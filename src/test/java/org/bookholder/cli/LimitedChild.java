package org.bookholder.cli;

import java.nio.file.Path;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.Spoken;

/** Reads a recording in a process of its own, in which no file may grow beyond a limit. */
final class LimitedChild {
    private LimitedChild() {}

    /** Reads {@code wheel.md} to {@code wheel.wav} in the folder given. */
    public static void main(String[] arguments) {
        Program program = new Program(Path.of(arguments[0]));
        program.equipment.hears(new FakeEars(
                new Spoken(1).says("every wheel begins with its hub").hypotheses()));
        int status = program.run(
                "read",
                program.path("wheel.md"),
                "--audio",
                program.path("wheel.wav"),
                "--no-window",
                "--unpaced",
                "--session",
                program.path("session"));
        System.out.print(program.out());
        System.out.print(program.err());
        System.out.println("status " + status);
    }
}
