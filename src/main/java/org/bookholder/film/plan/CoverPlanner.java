package org.bookholder.film.plan;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.bookholder.cutlist.CoverSpan;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Script;

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

    /** Places them ({@link CoverSpan}). */
    public static List<PlacedCover> place(List<Found> covers, FilmPlan plan, Script lesson) {
        Map<Cover, Shot> shots =
                covers.stream().collect(Collectors.toMap(Found::cover, Found::shot, (first, same) -> first));
        return CoverSpan.of(covers.stream().map(Found::cover).toList(), lesson, new LineTimes(plan), plan.frames())
                .stream()
                .map(span -> new PlacedCover(
                        span.cover(), span.from(), span.to(), Objects.requireNonNull(shots.get(span.cover()))))
                .toList();
    }
}
