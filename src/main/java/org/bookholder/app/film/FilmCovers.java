package org.bookholder.app.film;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.app.script.AuthorPicture;
import org.bookholder.film.plan.CoverPlanner;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.PlacedCover;
import org.bookholder.film.plan.Shot;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Script;

/**
 * The pictures and clips of the author's that a script lays over the voice.
 *
 * @param found those that can be shown
 * @param troubles why the others cannot
 */
record FilmCovers(List<CoverPlanner.Found> found, List<ProblemException> troubles) {
    /** A clip may be longer than its place by this many seconds without a word. */
    private static final double SLACK = 0.2;

    FilmCovers {
        found = List.copyOf(found);
        troubles = List.copyOf(troubles);
    }

    /** Looks for those of a lesson, beside its script. */
    static FilmCovers of(Script lesson) {
        List<CoverPlanner.Found> found = new ArrayList<>();
        List<ProblemException> troubles = new ArrayList<>();
        for (Cover cover : lesson.covers()) {
            try {
                AuthorPicture picture = AuthorPicture.of(lesson, cover);
                Shot.Kind kind = picture.still() ? Shot.Kind.STILL : Shot.Kind.CLIP;
                found.add(new CoverPlanner.Found(cover, Shot.ofAuthor(picture.file(), picture.facts(), kind)));
            } catch (ProblemException e) {
                troubles.add(e);
            }
        }
        return new FilmCovers(found, troubles);
    }

    /** What a person should know of them in a film, one sentence each. */
    List<String> remarks(FilmPlan plan) throws ProblemException {
        List<String> remarks = new ArrayList<>();
        for (PlacedCover cover : plan.covers()) {
            if (cover.shot().kind() == Shot.Kind.CLIP) {
                double has = FootageFile.look(cover.shot().file()).length().seconds();
                double place = plan.rate().length(cover.to() - cover.from()).seconds();
                if (has > place + SLACK) {
                    remarks.add(String.format(
                            Locale.ROOT,
                            "%s is %.1f s long, but its place from line %d on has only %.1f s: the rest is not shown",
                            cover.cover().file(),
                            has,
                            cover.cover().line(),
                            place));
                }
            }
        }
        return remarks;
    }
}
