package org.bookholder.film.plan;

import org.bookholder.footage.Footage;
import org.bookholder.footage.PictureFacts;
import org.bookholder.footage.Placement;
import org.bookholder.session.FilmChoices;
import org.bookholder.timing.FrameRate;

/**
 * A camera's file that shows a take.
 *
 * @param footage the file
 * @param picture how its picture is stored
 * @param placement where the take lies in it
 * @param point what stays in place when it is framed closer
 */
public record Camera(Footage footage, PictureFacts picture, Placement placement, FilmChoices.Point point) {
    /** Whether its pictures come at that rate throughout, so that the number of one gives its time. */
    boolean steadyAt(FrameRate rate) {
        return footage.picture()
                .filter(p -> !p.variable() && p.rate().equals(rate))
                .isPresent();
    }
}
