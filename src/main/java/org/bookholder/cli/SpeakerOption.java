package org.bookholder.cli;

import java.util.List;
import java.util.stream.Stream;
import org.bookholder.script.source.SpeakerChoice;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Whose lines of a script are read. */
final class SpeakerOption {
    @Option(
            names = "--speaker",
            paramLabel = "NAME",
            description =
                    "Whose lines are read, if names such as HOST: stand before the lines; those of others are shown,"
                            + " and not expected. Give it once for each.")
    private String @Nullable [] given;

    /** The names; empty if the script's own setting counts. */
    List<String> names() {
        return given == null
                ? List.of()
                : Stream.of(given)
                        .flatMap(names -> SpeakerChoice.names(names).stream())
                        .toList();
    }
}
