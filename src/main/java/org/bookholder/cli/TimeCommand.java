package org.bookholder.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.bookholder.app.course.RunningTimes;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.course.prepare.TimeText;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Estimates how long lessons will run, and lists words that are hard to say. */
@Command(
        name = "time",
        sortOptions = false,
        description = {
            "Show how long a lesson or a course will run, and what is hard to say.",
            "Running times are at the target pace and at your own."
        })
final class TimeCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "SCRIPT|FOLDER", description = "A lesson's script, or a course's folder.")
    private @Nullable Path place;

    @Option(names = "--json", description = "The same as JSON, for other programs.")
    private boolean json;

    @Mixin
    private final SpeakerOption speakers = new SpeakerOption();

    @Mixin
    private final PresenterOption presenter = new PresenterOption();

    TimeCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException, JsonProcessingException {
        RunningTimes times = RunningTimes.of(
                Objects.requireNonNull(place), speakers.names(), new TargetPaces(here, presenter.name()), here);
        terminal.leftOut(times.unreadable());
        if (json) {
            // Made only here: every start of the program makes all its commands.
            JsonMapper mapper = JsonMapper.builder()
                    .addModule(new Jdk8Module())
                    .enable(SerializationFeature.INDENT_OUTPUT)
                    .build();
            terminal.out().println(mapper.writeValueAsString(times.lessons()));
        } else {
            TimeText.of(times.course(), times.lessons(), times.measured(), times.wordsChecked())
                    .forEach(terminal.out()::println);
        }
        return 0;
    }
}
