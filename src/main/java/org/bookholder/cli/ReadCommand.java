package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.reading.ReadingRequest;
import org.bookholder.app.reading.WindowPreferences;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.session.Mover;
import org.bookholder.view.settings.WindowWish;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reads a lesson. */
@Command(
        name = "read",
        sortOptions = false,
        description = {
            "Read a lesson to the camera. The reading window follows your voice; afterwards you get the list of lines "
                    + "to pick up.",
            "In the window, K shows what each key does. Close it or press Ctrl-C to end. Without a window, Enter ends"
                    + " too, and a letter with Enter steers: H hold or go on, C cut, N next take, R pickup round, L leave"
                    + " its line, A the line again."
        })
final class ReadCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "SCRIPT",
            description = "The lesson: a Markdown, plain text or Word (.docx) file.")
    private @Nullable Path script;

    @Option(
            names = "--session",
            paramLabel = "FOLDER",
            description =
                    "Where takes and notes are kept. If a session is there already, it goes on with a new take. If "
                            + "you leave it out, today's interrupted session continues, or a new one starts.")
    private @Nullable Path session;

    @Option(
            names = "--new-session",
            description = "Begin a new session, even if the last one of this script was broken off.")
    private boolean anew;

    @Option(names = "--from", paramLabel = "LINE", description = "Begin at this line, counted from 1.")
    private @Nullable Integer from;

    @Option(
            names = "--pickups",
            description = "Begin with the pickup round: each line to pick up comes, until it is read clean.")
    private boolean pickups;

    @Option(names = "--microphone", paramLabel = "NAME", description = "Listen to this microphone.")
    private @Nullable String microphone;

    @Option(names = "--list-microphones", description = "List the microphones of this machine, and do no more.")
    private boolean listMicrophones;

    @Option(names = "--no-microphone", description = "Read without being heard: by hand, or with --move steady.")
    private boolean noMicrophone;

    @Option(names = "--audio", paramLabel = "FILE", description = "Hear a recording (WAV) instead of a microphone.")
    private @Nullable Path audio;

    @Option(names = "--unpaced", description = "With --audio and --no-window: as fast as this machine can.")
    private boolean unpaced;

    @Option(
            names = "--presenter",
            paramLabel = "NAME",
            description = "Who reads, if several people do at this machine: breaks are counted for each of them.")
    private @Nullable String presenter;

    @Option(names = "--no-window", description = "Show progress in the terminal only.")
    private boolean noWindow;

    @Option(names = "--no-desk", description = "Open no desk: no page for a producer.")
    private boolean noDesk;

    @Option(names = "--model", paramLabel = "FOLDER", description = "Use this speech model (Vosk).")
    private @Nullable Path model;

    @Mixin
    private final WindowOptions window = new WindowOptions();

    @Mixin
    private final DeskOptions desk = new DeskOptions();

    @Option(
            names = {"-v", "--verbose"},
            description = "Say more about what is done.")
    private boolean verbose;

    ReadCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        if (listMicrophones) {
            return listMicrophones();
        }
        return TerminalReading.run(here, terminal, request(), verbose);
    }

    private int listMicrophones() throws ProblemException {
        List<String> names = here.equipment().microphones();
        if (names.isEmpty()) {
            terminal.out().println("No microphone was found.");
        }
        names.forEach(terminal.out()::println);
        return 0;
    }

    private ReadingRequest request() throws ProblemException {
        if (script == null) {
            throw wrong("no script was given", "SCRIPT", "name the lesson's file, as in: bookholder read lesson.md");
        }
        if (audio != null && (microphone != null || noMicrophone)) {
            throw wrong("a recording takes the microphone's place", "--audio", "leave out the microphone options");
        }
        if (noMicrophone && microphone != null) {
            throw wrong("contradicts --microphone", "--no-microphone", "leave one of the two out");
        }
        if (unpaced && (audio == null || !noWindow)) {
            throw wrong("only a recording can be read faster than life", "--unpaced", "add --audio FILE --no-window");
        }
        Optional<WindowWish> wish = noWindow
                ? Optional.empty()
                : Optional.of(window.over(WindowPreferences.of(here, script).wish()));
        int countIn = wish.isPresent() ? wish.get().settings().countIn() : window.countIn();
        boolean handOrSteady = audio == null && microphone == null && window.move() != Mover.VOICE;
        return new ReadingRequest(
                script,
                Optional.ofNullable(presenter),
                Optional.ofNullable(session),
                anew || unpaced,
                Optional.ofNullable(from),
                new Conduct(countIn, pickups),
                Optional.ofNullable(audio),
                Optional.ofNullable(microphone),
                noMicrophone,
                handOrSteady,
                unpaced,
                wish,
                noDesk || unpaced ? Optional.empty() : Optional.of(desk.request()),
                model == null ? here.model() : model);
    }

    private static ProblemException wrong(String what, String where, String remedy) {
        return new ProblemException(what, where, remedy);
    }
}
