package org.bookholder.app.film;

import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.follow.model.Attempt;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;

/**
 * A file that was matched and cannot be used: it is gone, was cut short or cannot be read.
 *
 * @param number the number of its session, from 0
 * @param session the folder of its session
 * @param placed the file, and which takes lie in it
 * @param why what is wrong with it
 */
record LostFile(int number, Path session, PlacedFootage placed, ProblemException why) {
    /** Whether it showed an attempt of its session, or a part of it. */
    boolean showed(Attempt attempt) {
        return placed.footage().picture().isPresent() && holds(attempt.take(), attempt.start(), attempt.end());
    }

    private boolean holds(int take, StreamTime from, StreamTime to) {
        return placed.placement(take)
                .filter(place -> from.isBefore(place.to()) && place.from().isBefore(to))
                .isPresent();
    }

    /** The lines of a film that stand on it: nothing else shows them, or nothing else lets them be heard. */
    List<Integer> lines(FilmPlan plan) {
        return List.copyOf(new TreeSet<>(plan.clips().stream()
                .filter(clip -> clip.used() && clip.session() == number && standsOnIt(clip))
                .flatMap(clip ->
                        IntStream.rangeClosed(clip.firstLine(), clip.lastLine()).boxed())
                .toList()));
    }

    private boolean standsOnIt(FilmClip clip) {
        boolean unseen = clip.shot().isEmpty() && placed.footage().picture().isPresent();
        boolean unheard = clip.heard().isEmpty() && placed.footage().sound().isPresent();
        return (unseen || unheard) && holds(clip.take(), clip.in(), clip.out());
    }

    /** What is wrong with it, with its name and its session, without a full stop. */
    String said() {
        return placed.footage().name() + " " + why.what() + " (session " + session.getFileName() + ")";
    }
}
