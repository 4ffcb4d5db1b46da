package org.bookholder.film.plan;

import java.nio.file.Path;
import org.bookholder.footage.PictureFacts;
import org.bookholder.session.FilmChoices;

/**
 * The pictures of a clip.
 *
 * @param file the file
 * @param picture how its picture is stored
 * @param kind what it is
 * @param steady whether its pictures come at the film's rate throughout; if not, each picture of the film is the one that
 *     was on show in the file at that time
 * @param first the number of the first picture, counted from 0 at the film's rate on the file's own time
 * @param scale how close it is framed, in per cent of the picture as shot
 * @param point what stays in place when it is framed closer
 */
public record Shot(
        Path file, PictureFacts picture, Kind kind, boolean steady, long first, int scale, FilmChoices.Point point) {
    /** What shows something. */
    public enum Kind {
        /** A camera's file: it fills the frame. */
        CAMERA,
        /** A clip of the author's, such as a recording of a screen: all of it is shown. */
        CLIP,
        /** A still of the author's, likewise. */
        STILL
    }

    /** A camera's file, framed around the eyes of somebody in the middle. */
    public Shot(Path file, PictureFacts picture, boolean steady, long first, int scale) {
        this(file, picture, Kind.CAMERA, steady, first, scale, FilmChoices.Point.EYES);
    }

    /** A picture or clip of the author's, from its beginning. */
    public static Shot ofAuthor(Path file, PictureFacts picture, Kind kind) {
        return new Shot(file, picture, kind, kind == Kind.STILL, 0, 100, FilmChoices.Point.EYES);
    }

    /** The same around another point. */
    public Shot around(FilmChoices.Point other) {
        return new Shot(file, picture, kind, steady, first, scale, other);
    }

    Shot framed(int percent) {
        return new Shot(file, picture, kind, steady, first, percent, point);
    }

    /** The same from so many pictures later on. */
    public Shot later(long frames) {
        return new Shot(file, picture, kind, steady, kind == Kind.STILL ? 0 : first + frames, scale, point);
    }
}
