package org.bookholder.wording;

import org.bookholder.session.LineCounts;

/** Puts into words how many lines were read, skipped and not reached. */
public final class LinesText {
    private LinesText() {}

    /** For example "57 of 60 lines read, 2 skipped, 1 not reached". */
    public static String of(LineCounts counts) {
        return counts.read() + " of " + counts.all() + (counts.all() == 1 ? " line read" : " lines read")
                + (counts.skipped() == 0 ? "" : ", " + counts.skipped() + " skipped")
                + (counts.notReached() == 0 ? "" : ", " + counts.notReached() + " not reached");
    }
}
