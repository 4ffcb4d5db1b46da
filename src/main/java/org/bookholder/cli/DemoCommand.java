package org.bookholder.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.reading.ReadingRequest;
import org.bookholder.app.reading.WindowPreferences;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.view.settings.WindowWish;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Plays the recorded reading of the demo's first lesson. */
@Command(
        name = "demo",
        sortOptions = false,
        description = {
            "Play a recorded reading of a lesson into the reading window, in real time.",
            "The reader skips a line, starts one again, says a wrong word, breaks off, and speaks out of turn: watch "
                    + "the window follow, and read the list of pickups at the end."
        })
final class DemoCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Option(names = "--no-window", description = "Show progress in the terminal only.")
    private boolean noWindow;

    @Option(names = "--unpaced", description = "With --no-window: as fast as this machine can.")
    private boolean unpaced;

    @Option(names = "--session", paramLabel = "FOLDER", description = "Where to keep the session.")
    private @Nullable Path session;

    @Option(names = "--model", paramLabel = "FOLDER", description = "Use this speech model (Vosk).")
    private @Nullable Path model;

    @Mixin
    private final WindowOptions window = new WindowOptions();

    @Mixin
    private final DeskOptions desk = new DeskOptions();

    DemoCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        Path script = here.demoScripts().resolve("lesson-1.md");
        if (!Files.exists(script)) {
            throw new ProblemException(
                    "the demo's lesson is missing", script.toString(), "unpack the program again, in full");
        }
        if (unpaced && !noWindow) {
            throw new ProblemException("a window shows life as it is", "--unpaced", "add --no-window");
        }
        WindowWish wish = window.over(WindowPreferences.of(here, script).wish());
        ReadingRequest request = new ReadingRequest(
                script,
                List.of(),
                Optional.empty(),
                Optional.ofNullable(session),
                true,
                Optional.empty(),
                new Conduct(noWindow ? 0 : wish.settings().countIn(), false),
                Optional.of(here.demoScripts().resolve("lesson-1.wav")),
                Optional.empty(),
                false,
                false,
                unpaced,
                noWindow ? Optional.empty() : Optional.of(wish),
                noWindow ? Optional.empty() : Optional.of(desk.request()),
                model == null ? here.model() : model);
        return TerminalReading.run(here, terminal, request, false);
    }
}
