package org.bookholder.film.format;

import org.bookholder.footage.PictureFacts;

/**
 * How a camera's picture fills a film's frame of another shape: it is cut at two sides, or, where that would cost too much of
 * it, shown whole between two bars.
 *
 * @param width of the part of the camera's picture that fills the frame, in its pixels; larger than the picture if there are bars
 * @param height likewise
 * @param barred whether there are bars
 */
public record FrameFit(double width, double height, boolean barred) {
    /** Our choice: less than this share of the picture is not enough to show a person. */
    private static final double LEAST_KEPT = 0.7;

    /** How a picture fills a frame whose width is {@code shape} times its height. */
    public static FrameFit of(PictureFacts picture, double shape) {
        double own = (double) picture.width() / picture.height();
        boolean barred = Math.min(own, shape) / Math.max(own, shape) < LEAST_KEPT;
        boolean byHeight = own > shape != barred;
        return byHeight
                ? new FrameFit(picture.height() * shape, picture.height(), barred)
                : new FrameFit(picture.width(), picture.width() / shape, barred);
    }
}
