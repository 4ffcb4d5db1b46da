package org.bookholder.film.program;

import org.bookholder.problem.ProblemException;

/** Waits a moment between two looks at an {@link FfmpegRun}. */
@FunctionalInterface
public interface Pause {
    /** Returns after some hundredths of a second; may end the work by throwing. */
    void rest() throws ProblemException;
}
