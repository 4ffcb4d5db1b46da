package org.bookholder.film.sound;

import org.bookholder.film.plan.Heard;
import org.bookholder.footage.Interpolator;
import org.bookholder.problem.ProblemException;

/**
 * The sound of one clip, sample by sample of the film, also a little before and after it. Where the source's clock runs at
 * another speed it is interpolated.
 */
final class ClipVoice {
    /** Over a whole clip a difference of less than this many samples between two clocks cannot be heard or seen. */
    private static final double NO_DRIFT = 0.25;

    private final SoundPieces pieces;
    private final long start;
    private final double from;
    private final double step;
    private final boolean whole;

    /**
     * Begins.
     *
     * @param start number of the clip's first sample in the film
     * @param length how many samples it has
     */
    ClipVoice(SoundPieces pieces, Heard heard, long start, long length) {
        this.pieces = pieces;
        this.start = start;
        this.whole = Math.abs(heard.step() - 1) * length < NO_DRIFT;
        this.from = whole ? Math.rint(heard.from()) : heard.from();
        this.step = heard.step();
    }

    /** The sample of the film with that number. */
    float at(long sample) throws ProblemException {
        if (whole) {
            return pieces.at((long) from + sample - start);
        }
        return (float) Interpolator.at(from + (sample - start) * step, pieces::at);
    }
}
