package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.handoff.HandOffChoices;
import org.bookholder.app.handoff.HandOffRequest;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.FrameRate;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options of a hand-off. */
final class HandOffOptions {
    @Option(
            names = "--out",
            paramLabel = "DIR",
            description =
                    "Where the files go. Default: handoff in the session; of a lesson, a folder beside its sessions.")
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
        int[] size = HandOffChoices.size(delivery, "--delivery");
        return new HandOffRequest(
                Optional.ofNullable(out),
                parts(),
                only != null,
                rate(),
                Optional.ofNullable(drop),
                useMisread,
                size[0],
                size[1],
                replace);
    }

    private List<HandOffPart> parts() throws ProblemException {
        List<HandOffPart> all = Installed.handOffParts();
        return only == null ? all : HandOffChoices.parts(all, only, "--only");
    }

    private Optional<FrameRate> rate() throws ProblemException {
        return rate == null ? Optional.empty() : Optional.of(HandOffChoices.rate(rate, "--rate"));
    }
}
