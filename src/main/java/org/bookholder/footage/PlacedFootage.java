package org.bookholder.footage;

import java.util.List;

/**
 * A file of footage and where the takes of a session lie in it.
 *
 * @param footage the file
 * @param placements one for each take that was found in it, in order of takes
 */
public record PlacedFootage(Footage footage, List<Placement> placements) {
    /** Copies the list. */
    public PlacedFootage {
        placements = List.copyOf(placements);
    }
}
