package org.bookholder.app.handoff;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.FrameRate;

/** Turns what a person has written or chosen into the values of a {@link HandOffRequest}. */
public final class HandOffChoices {
    private static final String SIZE = "[1-9]\\d{0,4}x[1-9]\\d{0,4}";

    private HandOffChoices() {}

    /**
     * The kinds of files of some names, in the order in which they are written.
     *
     * @param where where the names stand, for messages
     * @throws ProblemException if there is no such kind
     */
    public static List<HandOffPart> parts(List<HandOffPart> all, Collection<String> wanted, String where)
            throws ProblemException {
        List<String> names = all.stream().map(HandOffPart::name).toList();
        for (String name : wanted) {
            if (!names.contains(name)) {
                throw new ProblemException(
                        "there is no kind '" + name + "'", where, "give some of: " + String.join(", ", names));
            }
        }
        return all.stream().filter(part -> wanted.contains(part.name())).toList();
    }

    /** A frame rate by its name. */
    public static FrameRate rate(String name, String where) throws ProblemException {
        Optional<FrameRate> named = FrameRate.named(name);
        return named.orElseThrow(() -> new ProblemException(
                "there is no rate '" + name + "'",
                where,
                "give one of: "
                        + FrameRate.STANDARD.stream().map(FrameRate::label).collect(Collectors.joining(", "))));
    }

    /**
     * Width and height of a picture in pixels.
     *
     * @param size as in 1920x1080
     */
    public static int[] size(String size, String where) throws ProblemException {
        if (!size.matches(SIZE)) {
            throw new ProblemException("'" + size + "' is no size", where, "give width and height, as in 1920x1080");
        }
        String[] numbers = size.split("x", -1);
        return new int[] {Integer.parseInt(numbers[0]), Integer.parseInt(numbers[1])};
    }
}
