package org.bookholder.film.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.PlacedCover;
import org.bookholder.film.plan.Shot;

/**
 * Pictures of a film that are made in one go: a clip, or a part of one before, under or behind a picture of the author's.
 *
 * @param clip the clip
 * @param offset how many of the clip's pictures come before
 * @param frames how many pictures it has, at least one
 * @param shot what is shown; empty for a card
 */
record PicturePiece(FilmClip clip, long offset, long frames, Optional<Shot> shot) {
    /** The pieces of a film, in order. A card is not laid over: it says that something is missing. */
    static List<PicturePiece> of(FilmPlan plan) {
        List<PicturePiece> pieces = new ArrayList<>();
        for (FilmClip clip : plan.clips()) {
            long at = clip.start();
            for (PlacedCover cover : clip.used() ? plan.covers() : List.<PlacedCover>of()) {
                long from = Math.max(at, cover.from());
                long to = Math.min(clip.end(), cover.to());
                if (from < to) {
                    own(pieces, clip, at, from);
                    Shot shot = cover.shot().later(from - cover.from());
                    pieces.add(new PicturePiece(clip, from - clip.start(), to - from, Optional.of(shot)));
                    at = to;
                }
            }
            own(pieces, clip, at, clip.end());
        }
        return pieces;
    }

    private static void own(List<PicturePiece> pieces, FilmClip clip, long from, long to) {
        if (from < to) {
            long offset = from - clip.start();
            pieces.add(new PicturePiece(clip, offset, to - from, clip.shot().map(shot -> shot.later(offset))));
        }
    }
}
