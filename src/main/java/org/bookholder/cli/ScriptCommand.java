package org.bookholder.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.script.KnownWords;
import org.bookholder.app.script.ScriptInspection;
import org.bookholder.app.script.ScriptJson;
import org.bookholder.app.script.ScriptText;
import org.bookholder.app.session.CourseHabits;
import org.bookholder.app.session.HeardAs;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ScriptReader;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows how a script is taken. */
@Command(
        name = "script",
        sortOptions = false,
        description = {
            "Show how a script is taken: each line as it will be read, directions, what is left out and why,",
            "the forms in which numbers may be read, and words that the recogniser does not know."
        })
final class ScriptCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "SCRIPT", description = "A lesson's script.")
    private @Nullable Path file;

    @Option(names = "--json", description = "The same as JSON, for other programs.")
    private boolean json;

    @Option(
            names = "--say",
            paramLabel = "WRITTEN=SAID",
            description = {
                "First choose for the whole course how something is said, as in \"350=three fifty\";",
                "\"350=\" takes that back. It stands in course.yaml."
            })
    private List<String> say = new ArrayList<>();

    @Option(
            names = "--forget-heard",
            paramLabel = "WORD=HEARD",
            description = {
                "First forget that a word is heard as something else when you read it, as in \"spokes=folks\":",
                "it is called misread again."
            })
    private List<String> forget = new ArrayList<>();

    @Mixin
    private final SpeakerOption speakers = new SpeakerOption();

    @Mixin
    private final PresenterOption presenter = new PresenterOption();

    ScriptCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        Path script = Objects.requireNonNull(file);
        CourseHabits habits = new CourseHabits(here);
        for (String choice : say) {
            choose(habits, script, choice);
        }
        HeardAs heard = new HeardAs(here, presenter.name());
        for (String pair : forget) {
            forget(heard, pair);
        }
        try (KnownWords words = new KnownWords(here)) {
            ScriptInspection found = ScriptInspection.of(script, speakers.names(), words)
                    .said(habits.known(script))
                    .aimed(new TargetPaces(here, presenter.name()));
            if (json) {
                ObjectNode all = ScriptJson.of(found);
                ScriptJson.heardAs(all, presenter.name(), heard.known());
                terminal.out().println(all.toPrettyString());
            } else {
                ScriptText.of(found).forEach(terminal.out()::println);
                ScriptText.heardAs(heard.known()).forEach(terminal.out()::println);
            }
            return 0;
        }
    }

    private static void choose(CourseHabits habits, Path script, String choice) throws ProblemException {
        int equals = choice.indexOf('=');
        if (equals < 1) {
            throw new ProblemException(
                    "this does not say how something is said", choice, "write it as in --say \"350=three fifty\"");
        }
        // A script that can't be read belongs to no course that could be changed.
        ScriptReader.bytes(script);
        habits.choose(script, choice.substring(0, equals), choice.substring(equals + 1));
    }

    private static void forget(HeardAs heard, String pair) throws ProblemException {
        int equals = pair.lastIndexOf('=');
        if (equals < 1) {
            throw new ProblemException(
                    "this does not say what is to be forgotten",
                    pair,
                    "write it as in --forget-heard \"spokes=folks\"");
        }
        heard.forget(pair.substring(0, equals), pair.substring(equals + 1));
    }
}
