package org.bookholder.cutlist;

import java.util.List;
import java.util.Optional;
import org.bookholder.timing.StreamTime;

/** One piece of a cut lesson. */
public sealed interface CutItem permits Clip, Gap {
    /** The first line in it, from 1. */
    int firstLine();

    /** The last line in it. */
    int lastLine();

    /** How long it lasts. */
    StreamTime length();

    /** Notes for the editor, in order of time. */
    List<CutMarker> markers();

    /** The clip, if it is one. */
    default Optional<Clip> clip() {
        return Optional.empty();
    }

    /** The lines as people write them: "4" or "4-7". */
    default String lines() {
        return firstLine() == lastLine() ? Integer.toString(firstLine()) : firstLine() + "-" + lastLine();
    }
}
