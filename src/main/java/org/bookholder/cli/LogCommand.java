package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.course.LessonPlace;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.app.footage.FootageLogListener;
import org.bookholder.app.footage.FootageLogRequest;
import org.bookholder.app.footage.FootageLogging;
import org.bookholder.app.footage.MatchText;
import org.bookholder.app.footage.SourceChoices;
import org.bookholder.app.handoff.HandOffRequest;
import org.bookholder.app.reading.ReadingListener;
import org.bookholder.app.reading.ReadingResult;
import org.bookholder.footage.RecordingJoiner;
import org.bookholder.footage.WholeRecording;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Shutdown;
import org.bookholder.wording.TakeSourcesText;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Turns footage that was filmed without the program into a session and a hand-off. */
@Command(
        name = "log",
        sortOptions = false,
        description = {
            "Follow footage that was filmed before, as if it were live: each file becomes a take of a session. Out"
                    + " come the lines to pick up and the hand-off, which points into the files.",
            "Files of one recording, which the camera split, become one take: they lie in one folder, are numbered one"
                    + " after the other, and go on in time and in sound."
        })
final class LogCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(
            index = "0",
            paramLabel = "SCRIPT",
            description = "The lesson: a Markdown, plain text or Word (.docx) file.")
    private @Nullable Path script;

    @Parameters(
            index = "1..*",
            arity = "1..*",
            paramLabel = "FILE",
            description = "Camera or recorder files, in the order in which they were filmed.")
    private @Nullable List<Path> files;

    @Option(
            names = "--each-file",
            description = "Make each file a take of its own, even where it goes on from the one before.")
    private boolean eachFile;

    @Option(
            names = "--join-numbered",
            description =
                    "Join files that are numbered one after the other also where they don't say at what time they were"
                            + " recorded.")
    private boolean joinNumbered;

    @Option(names = "--session", paramLabel = "FOLDER", description = "Where the session is kept.")
    private @Nullable Path session;

    @Option(names = "--model", paramLabel = "FOLDER", description = "Use this speech model (Vosk).")
    private @Nullable Path model;

    @Mixin
    private final HandOffOptions options = new HandOffOptions();

    LogCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        HandOffRequest handOff = options.request();
        FootageLogRequest request = new FootageLogRequest(
                Objects.requireNonNull(script),
                Objects.requireNonNull(files),
                FootageLogRequest.Join.of(eachFile, joinNumbered),
                Optional.ofNullable(session),
                model == null ? here.model() : model);
        try (Shutdown end = Shutdown.onInterrupt(() -> {})) {
            Takes takes = new Takes();
            try {
                Path place = new FootageLogging(here, takes, new TerminalControl(end, terminal)).log(request);
                TakeSourcesText.lines(new SourceChoices(here).show(place).takes())
                        .forEach(terminal.out()::println);
                return handOff(place, handOff, takes.status, end);
            } catch (OperationInterrupted e) {
                // Print this before the shutdown continues, or the line would be lost.
                terminal.warn("interrupted; nothing was followed");
                terminal.err().flush();
                return InterruptibleCommand.STATUS;
            }
        }
    }

    private int handOff(Path place, HandOffRequest request, int status, Shutdown end) throws ProblemException {
        if (end.asked()) {
            terminal.out().println("What was followed so far can be handed off: bookholder handoff " + place);
            return status;
        }
        return HandOffOutput.write(here, request, LessonPlace.ofSession(place), terminal, status);
    }

    /** Prints the progress of each recording; the command ends with the worst exit status. */
    private final class Takes implements FootageLogListener {
        private int status;
        private ReadingPrinter printer = ReadingPrinter.ofFootage(here, terminal, Objects.requireNonNull(script));

        @Override
        public void apart(RecordingJoiner.Apart files) {
            terminal.warn(MatchText.apart(files, "with --join-numbered"));
        }

        @Override
        public ReadingListener following(WholeRecording recording) {
            if (recording.split()) {
                terminal.out().println(MatchText.joined(recording));
            }
            terminal.out().println("Following " + recording.name());
            printer = ReadingPrinter.ofFootage(here, terminal, Objects.requireNonNull(script));
            return printer;
        }

        @Override
        public void followed(ReadingResult result) {
            status = Math.max(status, printer.finished(result));
        }
    }
}
