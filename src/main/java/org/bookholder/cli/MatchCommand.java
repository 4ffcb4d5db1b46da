package org.bookholder.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.footage.FileMatch;
import org.bookholder.app.footage.FootageMatching;
import org.bookholder.app.footage.MatchText;
import org.bookholder.app.footage.MissedTake;
import org.bookholder.app.footage.SourceChoices;
import org.bookholder.app.footage.TakeSourcesJson;
import org.bookholder.cutlist.TakeSources;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.problem.ProblemException;
import org.bookholder.wording.TakeSourcesText;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Finds the place of footage in a session, and says and changes which files are seen and heard. */
@Command(
        name = "match",
        sortOptions = false,
        description = {
            "Find by their sound where camera and recorder files lie in a session, and say which file gives the picture of "
                    + "each take and which its sound. From then on 'bookholder handoff' points into them, with their own "
                    + "timecode, and 'bookholder film' is made of them.",
            "Without files only that is said, and what you choose is kept. Each choice holds until you choose again or undo it."
        })
final class MatchCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(
            index = "0",
            paramLabel = "SESSION|LESSON",
            description = "The session's folder, or the lesson's script for its latest session.")
    private @Nullable Path session;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "FILE", description = "Camera and recorder files.")
    private @Nullable List<Path> files;

    @Option(
            names = "--picture",
            paramLabel = "FILE",
            description = "Show this matched file; '" + SourceChoices.AUTOMATIC + "' lets the program choose again.")
    private @Nullable String picture;

    @Option(
            names = "--sound",
            paramLabel = "FILE[:CHANNEL]",
            description =
                    "Hear this matched file, all of it (:all), one channel (:3), two together (:1+2) or with the second "
                            + "inverted (:1-2); '" + SourceChoices.OWN + "' is the take's own recording, '"
                            + SourceChoices.AUTOMATIC + "' lets the program choose again.")
    private @Nullable String sound;

    @Option(
            names = "--take",
            paramLabel = "N",
            split = ",",
            description = "The takes that --picture and --sound are about. Default: all of the session.")
    private @Nullable List<Integer> takes;

    @Option(
            names = "--undo",
            description = "Take back the last choice of picture or sound; of several takes each is one choice.")
    private boolean undo;

    @Option(names = "--json", description = "The result as JSON, for other programs.")
    private boolean json;

    MatchCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        Path place = LatestSession.of(Objects.requireNonNull(session), here, terminal);
        SourceChoices choices = new SourceChoices(here);
        SourceChoices.Wish wish = new SourceChoices.Wish(
                takes == null ? List.of() : takes, Optional.ofNullable(picture), Optional.ofNullable(sound));
        if (takes != null && wish.isEmpty()) {
            throw new ProblemException("says nothing of these takes", "--take", "add --picture or --sound");
        }
        List<FileMatch> matches = new ArrayList<>();
        List<Path> named = files;
        if (named != null) {
            int stopped = InterruptibleCommand.run(terminal, "what was matched so far is not kept", stop -> {
                matches.addAll(new FootageMatching(here, progress -> {}, stop).match(place, named, this::print));
                return 0;
            });
            if (stopped != 0) {
                return stopped;
            }
        }
        if (undo) {
            choices.undo(place);
        }
        if (!wish.isEmpty()) {
            choices.choose(place, wish);
        }
        print(matches, choices.show(place).takes());
        terminal.out().flush();
        return matches.stream().allMatch(match -> match.problem().isEmpty()) ? 0 : Main.NOT_OUR_FAULT;
    }

    private void print(List<FileMatch> matches, List<TakeSources> sources) {
        if (!json) {
            TakeSourcesText.lines(sources).forEach(terminal.out()::println);
            return;
        }
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode all = root.putArray("files");
        for (FileMatch match : matches) {
            ObjectNode node = all.addObject();
            node.put("file", match.file().toString());
            node.put("matched", match.placed().isPresent());
            match.problem().ifPresent(problem -> node.put("problem", problem.getMessage()));
        }
        root.set("takes", TakeSourcesJson.of(sources));
        terminal.out().println(root.toPrettyString());
    }

    private void print(FileMatch match) {
        if (!json) {
            match.placed().ifPresent(this::print);
            for (MissedTake missed : match.missed()) {
                terminal.out().println(match.file().getFileName() + ": " + MatchText.of(missed));
            }
        }
        match.problem().ifPresent(problem -> terminal.warn(problem.getMessage()));
    }

    private void print(PlacedFootage placed) {
        String name = placed.footage().name();
        MatchText.of(placed).forEach(line -> terminal.out().println(name + ": " + line));
        MatchText.caution(placed.footage()).ifPresent(line -> terminal.err().println("bookholder: " + line));
    }
}
