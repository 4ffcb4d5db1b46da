package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.SessionSettler;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.recovery.RecoveryProgress;
import org.bookholder.speech.Ears;

/**
 * Settles what a kill left unsettled before a session is shown or gone on with, and says so. What stands in the way is said
 * too and stops nobody: the session is then shown as it is.
 */
final class Recovery {
    private static final String LEFT = "the take that was being listened to stays as it was";

    private final Environment here;
    private final Terminal terminal;

    Recovery(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    private interface Listening {
        List<String> listen(RecoveryProgress progress) throws ProblemException;
    }

    /**
     * Settles a session, unless somebody has it open.
     *
     * @return 0, or the exit status of a program that was interrupted
     * @throws ProblemException if no session that can be read lies there
     */
    int settle(Path place) throws ProblemException {
        return settle(
                SessionSettler.unsettled(here, place), progress -> SessionSettler.settle(here, place, progress));
    }

    /** The same for a session that is open here. */
    int settle(SessionFolder folder, Ears ears) throws ProblemException {
        return settle(
                SessionSettler.unsettled(folder),
                progress -> SessionSettler.settle(here, folder, ears, progress));
    }

    private int settle(List<Integer> takes, Listening listening) throws ProblemException {
        if (takes.isEmpty()) {
            return 0;
        }
        tell(named(takes) + " broken off; listening again to what was recorded");
        return InterruptibleCommand.run(terminal, LEFT, stop -> {
            String name = "listening again to take ";
            int last = takes.get(takes.size() - 1);
            try (ProgressBar bar = new ProgressBar(terminal.err(), Terminal.console(), here.nanoTime(), name + last)) {
                listening
                        .listen((take, heard, length) -> {
                            stop.check();
                            bar.show(name + take, heard.seconds() / Math.max(length.seconds(), 1));
                        })
                        .forEach(this::tell);
            } catch (ProblemException e) {
                tell("it cannot be listened to again (" + e.getMessage()
                        + "); what was not settled before is not in the notes yet");
            }
            return 0;
        });
    }

    private void tell(String sentence) {
        terminal.err().println("bookholder: " + sentence);
    }

    private static String named(List<Integer> takes) {
        String numbers = takes.stream().map(String::valueOf).collect(Collectors.joining(", "));
        return takes.size() == 1 ? "take " + numbers + " was" : "takes " + numbers + " were";
    }
}
