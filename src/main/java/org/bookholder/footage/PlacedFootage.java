package org.bookholder.footage;

import java.util.List;
import java.util.Optional;

/**
 * A file of footage and where the takes of a session lie in it.
 *
 * @param footage the file
 * @param placements one for each take that was found in it, in order of takes
 * @param hearings how these takes are heard in it; none of takes of which that was not measured
 */
public record PlacedFootage(Footage footage, List<Placement> placements, List<Hearing> hearings) {
    /** Copies the lists. */
    public PlacedFootage {
        placements = List.copyOf(placements);
        hearings = List.copyOf(hearings);
    }

    /** One in which it was not measured how the takes are heard. */
    public PlacedFootage(Footage footage, List<Placement> placements) {
        this(footage, placements, List.of());
    }

    /** Where a take lies in it. */
    public Optional<Placement> placement(int take) {
        return placements.stream().filter(place -> place.take() == take).findFirst();
    }

    /** How a take is heard in it, if that was measured. */
    public Optional<Hearing> hearing(int take) {
        return hearings.stream().filter(hearing -> hearing.take() == take).findFirst();
    }
}
