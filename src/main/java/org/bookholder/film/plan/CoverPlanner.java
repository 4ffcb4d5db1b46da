package org.bookholder.film.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Script;
import org.bookholder.timing.StreamTime;

/** Works out which pictures of a film the author's own are laid over. */
public final class CoverPlanner {
    private CoverPlanner() {}

    /**
     * A picture or clip of the author's that was found and can be read.
     *
     * @param cover what the script says of it
     * @param shot its pictures
     */
    public record Found(Cover cover, Shot shot) {}

    /**
     * Places them: each from its word on, until the next direction, the paragraph's end or the next picture. One whose lines are not
     * in the film has no place.
     */
    public static List<PlacedCover> place(List<Found> covers, FilmPlan plan, Script lesson) {
        LineTimes times = new LineTimes(plan);
        List<PlacedCover> placed = new ArrayList<>();
        for (Found found : covers) {
            Cover cover = found.cover();
            int last = cover.lastLine(lesson.elements());
            Optional<StreamTime> from = first(cover, last, times);
            Optional<StreamTime> to = IntStream.iterate(last, line -> line >= cover.line(), line -> line - 1)
                    .mapToObj(times::end)
                    .flatMap(Optional::stream)
                    .findFirst();
            if (from.isPresent() && to.isPresent()) {
                add(placed, found, plan, from.get(), to.get());
            }
        }
        return placed;
    }

    /** Its word, or the beginning of the first of its lines that is in the film. */
    private static Optional<StreamTime> first(Cover cover, int last, LineTimes times) {
        Optional<StreamTime> word = times.word(cover.line(), cover.word());
        return word.or(() -> IntStream.rangeClosed(cover.line() + 1, last)
                .mapToObj(times::begin)
                .flatMap(Optional::stream)
                .findFirst());
    }

    private static void add(List<PlacedCover> placed, Found found, FilmPlan plan, StreamTime from, StreamTime to) {
        long first = plan.rate().nearestFrame(from.ticks());
        long end = Math.min(plan.frames(), plan.rate().nearestFrame(to.ticks()));
        if (!placed.isEmpty()) {
            PlacedCover before = placed.remove(placed.size() - 1);
            long cut = Math.min(before.to(), first);
            if (cut > before.from()) {
                placed.add(new PlacedCover(before.cover(), before.from(), cut, before.shot()));
            }
        }
        if (end > first) {
            placed.add(new PlacedCover(found.cover(), first, end, found.shot()));
        }
    }
}
