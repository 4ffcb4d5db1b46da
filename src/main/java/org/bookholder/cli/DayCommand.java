package org.bookholder.cli;

import java.util.concurrent.Callable;
import org.bookholder.app.day.Day;
import org.bookholder.app.day.DayJson;
import org.bookholder.app.day.DayService;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Shows what was read today, and when to rest. */
@Command(
        name = "day",
        sortOptions = false,
        description = {
            "Show what was read today in all sessions, the rests between them, and when the next break is advised.",
            "A day lasts until the next rest of four hours (see bookholder limits). Voice and eyes need rest; this is "
                    + "guidance, not medical advice."
        })
final class DayCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Option(
            names = "--presenter",
            paramLabel = "NAME",
            description = "Whose day, if several people read at this machine.")
    private String presenter = DayService.SOLE_PRESENTER;

    @Option(names = "--json", description = "The day as JSON, for other programs.")
    private boolean json;

    DayCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        Day day = new DayService(here, presenter).today();
        terminal.leftOut(day.unreadable());
        if (json) {
            terminal.out().println(DayJson.of(day).toPrettyString());
        } else {
            DayText.of(day, here.zone()).forEach(terminal.out()::println);
        }
        return 0;
    }
}
