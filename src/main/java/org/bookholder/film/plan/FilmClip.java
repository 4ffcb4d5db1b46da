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

    /** The share of the pause between two lines that belongs to the one before, where they were read in one go. */
    private static final double TAIL = 0.4;

    /** A card at the film's beginning that says its title. */
    static FilmClip title(long frames) {
        return new FilmClip(
                0, 0, 0, 0, StreamTime.ZERO, StreamTime.ZERO, 0, frames, Optional.empty(), Optional.empty(), List.of());
    }

    /** Whether it is the card that says the title. */
    public boolean isTitle() {
        return firstLine == 0;
    }

    /** Where an attempt's line begins, in the session's audio: with the clip, or in the quiet before it. */
    public StreamTime begin(int attempt) {
        return attempt == 0 ? in : between(attempts.get(attempt - 1), attempts.get(attempt));
    }

    /** Where it ends, likewise. */
    public StreamTime end(int attempt) {
        return attempt == attempts.size() - 1 ? out : between(attempts.get(attempt), attempts.get(attempt + 1));
    }

    private static StreamTime between(Attempt first, Attempt then) {
        long quiet = Math.max(0, then.start().ticks() - first.end().ticks());
        return first.end().plus(new StreamTime(Math.round(TAIL * quiet)));
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
