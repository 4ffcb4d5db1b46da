package org.bookholder.app.film;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.course.lists.CoverFiles;
import org.bookholder.film.plan.CoverPlanner;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.PlacedCover;
import org.bookholder.film.plan.Shot;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.footage.ffmpeg.PictureFile;
import org.bookholder.footage.ffmpeg.StillFile;
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
                found.add(new CoverPlanner.Found(cover, shot(file(lesson, cover))));
            } catch (ProblemException e) {
                troubles.add(new ProblemException(
                        cover.file() + " cannot be shown: " + e.what(),
                        lesson.source() + ":" + cover.sourceLine(),
                        "put a PNG, JPEG, WebP, MP4 or MOV there, or take it out of the script; a draft is made"
                                + " without it",
                        e));
            }
        }
        return new FilmCovers(found, troubles);
    }

    private static Shot shot(Path file) throws ProblemException {
        return StillFile.isStill(file)
                ? Shot.ofAuthor(file, StillFile.look(file), Shot.Kind.STILL)
                : Shot.ofAuthor(file, PictureFile.look(file), Shot.Kind.CLIP);
    }

    private static Path file(Script lesson, Cover cover) throws ProblemException {
        return CoverFiles.of(lesson, cover)
                .orElseThrow(
                        () -> new ProblemException("there is no such file", cover.file(), "put it beside the script"));
    }

    /** What a person should know of them in a film, one sentence each. */
    List<String> remarks(FilmPlan plan) throws ProblemException {
        List<String> remarks = new ArrayList<>();
        troubles.forEach(trouble -> remarks.add(trouble.getMessage()));
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
