package org.bookholder.app.film;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.bookholder.film.plan.FilmPlanner;

/**
 * A request to make a film.
 *
 * @param place the folder of a session, or the file of a lesson's script
 * @param out the film's file; empty for the usual one
 * @param draft whether it is a draft: small, with the numbers of lines burnt in and a card where there is nothing to use
 * @param leaveOut lines to be left out on purpose from now on: that is noted in their sessions
 * @param alternate whether the framing alternates where two pieces of one shot meet
 * @param enlarge whether the picture may be blown up to the size that the profile asks for
 * @param profile the delivery profile's file; empty for the course's, or the usual one
 * @param check whether a final film is checked, words and all, when it is made
 * @param anew whether a finished film is made again though nothing has changed since the last one
 * @param wishes what else is wished of the film
 */
public record FilmRequest(
        Path place,
        Optional<Path> out,
        boolean draft,
        Set<Integer> leaveOut,
        boolean alternate,
        boolean enlarge,
        Optional<Path> profile,
        boolean check,
        boolean anew,
        FilmPlanner.Wishes wishes) {
    /** Copies the set. */
    public FilmRequest {
        leaveOut = Set.copyOf(leaveOut);
    }
}
