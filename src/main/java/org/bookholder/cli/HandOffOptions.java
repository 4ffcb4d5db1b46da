package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.app.handoff.HandOffRequest;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.FrameRate;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options of a hand-off. */
final class HandOffOptions {
    @Option(names = "--out", paramLabel = "DIR", description = "Where the files go. Default: handoff in the session.")
    private @Nullable Path out;

    @Option(
            names = "--only",
            paramLabel = "KIND",
            split = ",",
            description = "Only these kinds, with commas between them. Default: all.")
    private @Nullable List<String> only;

    @Option(
            names = "--rate",
            paramLabel = "RATE",
            description = "Frames a second: 23.976, 24, 25, 29.97, 30, 50, 59.94 or 60. Default: the camera's, or 25.")
    private @Nullable String rate;

    @Option(
            names = "--drop-frame",
            negatable = true,
            description = "Count in drop-frame timecode, at 29.97 and 59.94. Default: as the camera does.")
    private @Nullable Boolean drop;

    @Option(
            names = "--use-misread",
            description = "Fill a line that has no clean attempt with a misread one, instead of a gap.")
    private boolean useMisread;

    @Option(
            names = "--delivery",
            paramLabel = "WxH",
            description = "Size of the delivered picture, which limits the punch-in. Default: 1920x1080.")
    private String delivery = "1920x1080";

    @Option(names = "--replace", description = "Replace files that are there already.")
    private boolean replace;

    /** The request that the options describe. */
    HandOffRequest request() throws ProblemException {
        return new HandOffRequest(
                Optional.ofNullable(out),
                parts(),
                only != null,
                rate(),
                Optional.ofNullable(drop),
                useMisread,
                size(0),
                size(1),
                replace);
    }

    private List<HandOffPart> parts() throws ProblemException {
        List<HandOffPart> all = Installed.handOffParts();
        if (only == null) {
            return all;
        }
        List<String> names = all.stream().map(HandOffPart::name).toList();
        for (String wanted : only) {
            if (!names.contains(wanted)) {
                throw new ProblemException(
                        "there is no kind '" + wanted + "'", "--only", "give some of: " + String.join(", ", names));
            }
        }
        List<String> wanted = only;
        return all.stream().filter(part -> wanted.contains(part.name())).collect(Collectors.toList());
    }

    private Optional<FrameRate> rate() throws ProblemException {
        if (rate == null) {
            return Optional.empty();
        }
        Optional<FrameRate> named = FrameRate.named(rate);
        if (named.isEmpty()) {
            throw new ProblemException(
                    "there is no rate '" + rate + "'",
                    "--rate",
                    "give one of: "
                            + FrameRate.STANDARD.stream().map(FrameRate::label).collect(Collectors.joining(", ")));
        }
        return named;
    }

    private int size(int index) throws ProblemException {
        if (!delivery.matches("[1-9]\\d{0,4}x[1-9]\\d{0,4}")) {
            throw new ProblemException(
                    "'" + delivery + "' is no size", "--delivery", "give width and height, as in 1920x1080");
        }
        return Integer.parseInt(delivery.split("x", -1)[index]);
    }
}
