package org.bookholder.app.film;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.delivery.CheckReport;
import org.bookholder.film.FilmMade;
import org.bookholder.film.plan.FilmPlan;

/**
 * What came of making a film.
 *
 * @param made the film
 * @param already whether it was there already, made from the same, so that none was made
 * @param plan what it is made of
 * @param sessions the folders of the sessions that it is made of, by their number in the plan
 * @param heard from which file and channels each take is heard, one line for each
 * @param marked lines that are used though they were not read clean, one sentence each
 * @param remarks what else a person should know, one sentence each
 * @param obstacles what stands in the way of a finished film: of a draft, as there are none otherwise
 * @param check what the check found; empty if it was not checked
 */
public record FilmResult(
        FilmMade made,
        boolean already,
        FilmPlan plan,
        List<Path> sessions,
        List<String> heard,
        List<String> marked,
        List<String> remarks,
        List<FilmObstacle> obstacles,
        Optional<CheckReport> check) {
    /** Copies the lists. */
    public FilmResult {
        sessions = List.copyOf(sessions);
        heard = List.copyOf(heard);
        marked = List.copyOf(marked);
        remarks = List.copyOf(remarks);
        obstacles = List.copyOf(obstacles);
    }
}
