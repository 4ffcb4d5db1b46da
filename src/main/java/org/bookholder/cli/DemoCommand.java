package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.problem.ProblemException;
import org.bookholder.view.WindowPlace;
import org.bookholder.view.WindowSettings;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Plays the demo recording into the reading window. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = "Follows a recorded reading of a lesson that has a few things wrong with it, and lists them.")
final class DemoCommand implements Callable<Integer> {
    @Option(names = "--no-window", description = "Stay in the terminal.")
    private boolean noWindow;

    @Option(names = "--unpaced", description = "As fast as it can be worked through.")
    private boolean unpaced;

    @Option(names = "--session", paramLabel = "DIR", description = "Where to keep the session.")
    private @Nullable Path session;

    @Override
    public Integer call() throws ProblemException, IOException {
        Path folder = Places.home().resolve("demo-scripts");
        return new LessonRun(new LessonRun.Order(
                        folder.resolve("lesson-1.md"),
                        Optional.of(folder.resolve("lesson-1.wav")),
                        unpaced,
                        !noWindow,
                        Optional.ofNullable(session),
                        0,
                        Optional.empty(),
                        false,
                        Places.model(),
                        WindowSettings.defaults(),
                        WindowPlace.windowed()))
                .run();
    }
}
