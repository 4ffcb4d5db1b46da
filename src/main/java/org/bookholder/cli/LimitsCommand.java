package org.bookholder.cli;

import java.util.concurrent.Callable;
import org.bookholder.fatigue.LimitsText;
import org.bookholder.problem.ProblemException;
import picocli.CommandLine.Command;

/** Shows when a break is advised, in the form in which it can be set. */
@Command(
        name = "limits",
        description = {
            "Show when a break is advised, and how to set it: the lines that are shown, in a file of yours.",
            "Guidance, not medicine; local work rules and the advice of those licensed to give it come first."
        })
final class LimitsCommand implements Callable<Integer> {
    private final Surroundings here;
    private final Terminal terminal;

    LimitsCommand(Surroundings here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        terminal.out().println("# When a break is advised, in minutes: as it nears, at it, well past it.");
        terminal.out().println("# To set your own, save these lines as " + here.limits() + " and change the numbers.");
        LimitsText.of(Limits.of(here)).forEach(terminal.out()::println);
        return 0;
    }
}
