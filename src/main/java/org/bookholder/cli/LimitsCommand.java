package org.bookholder.cli;

import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.BreakLimits;
import org.bookholder.fatigue.LimitsForm;
import org.bookholder.problem.ProblemException;
import org.bookholder.wording.Cautions;
import picocli.CommandLine.Command;

/** Shows the break limits in the form in which they can be set. */
@Command(
        name = "limits",
        description = {
            "Show when you are reminded to take a break. To set your own limits, save these lines in your own file.",
            "This is guidance, not medical advice; local work rules and licensed professional advice come first."
        })
final class LimitsCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    LimitsCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        terminal.out().println("# Break reminders, in minutes: early warning, limit, well over.");
        terminal.out().println("# To set your own, save these lines as " + here.limits() + " and change the numbers.");
        LimitsForm.lines(BreakLimits.of(here)).forEach(terminal.out()::println);
        terminal.out().println("# Where the default limits come from:");
        Cautions.sources().forEach(source -> terminal.out().println("#   " + source));
        Cautions.lines().forEach(caution -> terminal.out().println("# " + caution));
        return 0;
    }
}
