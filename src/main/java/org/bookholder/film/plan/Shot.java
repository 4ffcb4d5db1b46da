package org.bookholder.film.plan;

import java.nio.file.Path;
import org.bookholder.footage.PictureFacts;

/**
 * The pictures of a clip.
 *
 * @param file the camera's file
 * @param picture how its picture is stored
 * @param steady whether its pictures come at the film's rate throughout; if not, each picture of the film is the one that
 *     was on show in the file at that time
 * @param first the number of the first picture, counted from 0 at the film's rate on the file's own time
 * @param scale how close it is framed, in per cent of the picture as shot
 */
public record Shot(Path file, PictureFacts picture, boolean steady, long first, int scale) {
    Shot framed(int percent) {
        return new Shot(file, picture, steady, first, percent);
    }
}
