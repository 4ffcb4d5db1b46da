package org.bookholder.app.film;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Text;
import org.bookholder.film.FilmMaker;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.problem.ProblemException;

/** Finds all that stands in the way of a finished film, before anything of it is made. */
final class FilmObstacles {
    private FilmObstacles() {}

    /**
     * Finds them.
     *
     * @param session the last session of the film, with which footage would be matched
     * @param filmed whether any camera's file was matched, wherever it is now
     * @param lost what follows from files that cannot be used now
     * @param pictures why pictures of the author's cannot be shown
     * @param unmade why no film of the wished kind can be made, if so
     */
    static List<FilmObstacle> of(
            FilmPlan plan,
            Path session,
            boolean filmed,
            LostFiles lost,
            List<ProblemException> pictures,
            Optional<ProblemException> unmade) {
        List<FilmObstacle> all = new ArrayList<>(lost.obstacles());
        String match = "bookholder match " + session + " FILE";
        List<Integer> unseen = plan.unseen().stream()
                .filter(line -> !lost.lines().contains(line))
                .toList();
        if (!filmed) {
            all.add(new FilmObstacle(
                    "no camera's file was matched with it",
                    session.toString(),
                    "match them first: " + match + "...",
                    "match a camera's file first, on the page Match camera files",
                    false));
        }
        if (!plan.missing().isEmpty()) {
            all.add(new FilmObstacle(
                    "there is nothing to use for " + Text.lines(plan.missing()),
                    session.toString(),
                    "pick them up",
                    "pick them up",
                    true));
        }
        if (filmed && !unseen.isEmpty()) {
            all.add(new FilmObstacle(
                    "no camera's file shows " + Text.lines(unseen),
                    session.toString(),
                    "match the file that does: " + match,
                    "match the file that does, on the page Match camera files",
                    true));
        }
        pictures.stream().map(FilmObstacle::of).forEach(all::add);
        unmade.map(FilmObstacle::of).ifPresent(all::add);
        return all;
    }

    /** That there is no room for a film in the folder where it is to go, if so. */
    static Optional<FilmObstacle> room(FilmPlan plan, FilmFormat format, Path folder) {
        try {
            FilmMaker.checkRoom(plan, format, folder);
            return Optional.empty();
        } catch (ProblemException e) {
            return Optional.of(
                    new FilmObstacle(e.what(), e.where(), e.remedy(), "free some space on that disk", false));
        }
    }
}
