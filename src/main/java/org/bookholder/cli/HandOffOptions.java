package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.cutlist.CutRules;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.Timecode;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What can be said of a hand-off. */
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

    /** What goes without saying. */
    static HandOffOptions usual(boolean replace) {
        HandOffOptions options = new HandOffOptions();
        options.replace = replace;
        return options;
    }

    Path out(Path session) {
        return out == null ? session.resolve("handoff") : out;
    }

    boolean replace() {
        return replace;
    }

    CutRules rules() {
        return CutRules.defaults().withMisread(useMisread);
    }

    /** Whether kinds were chosen by name. */
    boolean chosen() {
        return only != null;
    }

    List<HandOffPart> parts() throws ProblemException {
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

    Timecode timecode(Timecode usual) throws ProblemException {
        FrameRate chosen = usual.rate();
        if (rate != null) {
            Optional<FrameRate> named = FrameRate.named(rate);
            chosen = named.orElseThrow(() -> new ProblemException(
                    "there is no rate '" + rate + "'",
                    "--rate",
                    "give one of: "
                            + FrameRate.STANDARD.stream().map(FrameRate::label).collect(Collectors.joining(", "))));
        }
        if (Boolean.TRUE.equals(drop) && !chosen.canDrop()) {
            throw new ProblemException(
                    "there is no drop-frame timecode at " + chosen.label() + " frames a second",
                    "--drop-frame",
                    "leave it out, or add --rate 29.97 or --rate 59.94");
        }
        boolean dropping = drop == null ? rate == null ? usual.drop() : chosen.canDrop() : drop;
        return new Timecode(chosen, dropping);
    }

    int deliveryWidth() throws ProblemException {
        return size(0);
    }

    int deliveryHeight() throws ProblemException {
        return size(1);
    }

    private int size(int index) throws ProblemException {
        if (!delivery.matches("[1-9]\\d{0,4}x[1-9]\\d{0,4}")) {
            throw new ProblemException(
                    "'" + delivery + "' is no size", "--delivery", "give width and height, as in 1920x1080");
        }
        return Integer.parseInt(delivery.split("x", -1)[index]);
    }
}
