package org.bookholder.film.program;

/** Waits a moment between two looks at an {@link FfmpegRun}. */
@FunctionalInterface
public interface Pause {
    /** Returns after some hundredths of a second; may end the work by throwing. */
    void rest();
}
