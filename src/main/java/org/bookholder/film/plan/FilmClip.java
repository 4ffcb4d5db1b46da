package org.bookholder.film.plan;

import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.Attempt;
import org.bookholder.timing.StreamTime;

/**
 * A piece of a film.
 *
 * @param firstLine its first line, from 1
 * @param lastLine its last line
 * @param session the session that it is from, counted from 0
 * @param take the take that it is from, from 1; 0 if there is nothing to use
 * @param in where it begins in the session's audio; zero if there is nothing to use
 * @param out where it ends there
 * @param start number of its first picture in the film, from 0
 * @param frames how many pictures it has, at least one
 * @param shot its pictures; empty for a card
 * @param heard its sound; empty for that of the room
 * @param attempts the attempts that are heard in it, in order of time; a line whose attempt goes on in the next piece is in
 *     both
 */
public record FilmClip(
        int firstLine,
        int lastLine,
        int session,
        int take,
        StreamTime in,
        StreamTime out,
        long start,
        long frames,
        Optional<Shot> shot,
        Optional<Heard> heard,
        List<Attempt> attempts) {
    /** Copies the list and checks the length. */
    public FilmClip {
        attempts = List.copyOf(attempts);
        if (frames < 1) {
            throw new IllegalArgumentException("frames (" + frames + ") must be one or more");
        }
    }

    /** Whether there is something to use for its lines. */
    public boolean used() {
        return take > 0;
    }

    /** Whether the reading goes on in another piece without a cut. */
    boolean goesOnIn(FilmClip next) {
        return session == next.session && take == next.take && out.equals(next.in);
    }

    /** The number of the picture after its last. */
    public long end() {
        return start + frames;
    }

    FilmClip framed(int percent) {
        return new FilmClip(
                firstLine,
                lastLine,
                session,
                take,
                in,
                out,
                start,
                frames,
                shot.map(s -> s.framed(percent)),
                heard,
                attempts);
    }
}
