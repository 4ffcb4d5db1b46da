package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Mover;
import org.bookholder.speech.microphone.Microphone;
import org.bookholder.view.WindowPlace;
import org.bookholder.view.WindowSettings;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reads a lesson: the window, the ears and the session, until the presenter ends it. */
@Command(
        name = "read",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Shows a script in the reading window, follows your voice, and lists the lines to pick up.",
            "In the window, K shows the keys."
        })
final class ReadCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCRIPT", arity = "0..1", description = "The lesson: Markdown or plain text.")
    private @Nullable Path script;

    @Option(names = "--audio", paramLabel = "FILE.wav", description = "Follow a recording instead of a microphone.")
    private @Nullable Path audio;

    @Option(names = "--unpaced", description = "Take a recording as fast as it can be worked through.")
    private boolean unpaced;

    @Option(names = "--no-window", description = "Stay in the terminal.")
    private boolean noWindow;

    @Option(
            names = "--session",
            paramLabel = "DIR",
            description = "Where to keep the session; one that is there goes on.")
    private @Nullable Path session;

    @Option(names = "--from", paramLabel = "LINE", defaultValue = "0", description = "Begin at this line.")
    private int from;

    @Option(names = "--microphone", paramLabel = "NAME", description = "Listen to this microphone.")
    private @Nullable String microphone;

    @Option(names = "--no-microphone", description = "Listen to nothing; move by hand or steadily.")
    private boolean silent;

    @Option(names = "--list-microphones", description = "List the microphones and end.")
    private boolean listMicrophones;

    @Option(names = "--model", paramLabel = "DIR", description = "Another speech model.")
    private @Nullable Path model;

    @Option(names = "--move", defaultValue = "VOICE", description = "What moves the text: ${COMPLETION-CANDIDATES}.")
    private @Nullable Mover move;

    @Option(names = "--full-screen", description = "Fill the screen.")
    private boolean fullScreen;

    @Option(names = "--monitor", paramLabel = "N", defaultValue = "1", description = "On this monitor, from 1.")
    private int monitor;

    @Option(names = "--mirror", description = "Mirror left and right, for glass.")
    private boolean mirror;

    @Option(names = "--distance", paramLabel = "MM", defaultValue = "0", description = "From your eyes to the screen.")
    private double distance;

    @Option(names = "--words", paramLabel = "N", defaultValue = "0", description = "Words in a row, about.")
    private int words;

    @Override
    public Integer call() throws ProblemException, IOException {
        if (listMicrophones) {
            Microphone.names().forEach(System.out::println);
            return 0;
        }
        if (script == null) {
            throw new ProblemException("no script was named", "bookholder read", "name a script file");
        }
        if (unpaced && audio == null) {
            throw new ProblemException(
                    "only a recording can be taken unpaced", "--unpaced", "give --audio FILE.wav too");
        }
        return new LessonRun(order(script)).run();
    }

    private LessonRun.Order order(Path file) {
        return new LessonRun.Order(
                file,
                Optional.ofNullable(audio),
                unpaced,
                !noWindow,
                Optional.ofNullable(session),
                from,
                Optional.ofNullable(microphone),
                silent,
                model == null ? Places.model() : model,
                settings(),
                fullScreen || monitor > 1 ? WindowPlace.fullScreen(monitor) : WindowPlace.windowed());
    }

    private WindowSettings settings() {
        Mover way = move == null ? Mover.VOICE : move;
        WindowSettings settings = WindowSettings.defaults()
                .withMirrored(mirror)
                .withWay(silent && way == Mover.VOICE ? Mover.STEADY : way);
        if (distance > 0) {
            settings = settings.withDistance(distance);
        }
        return words > 0 ? settings.withColumnWords(words) : settings;
    }
}
