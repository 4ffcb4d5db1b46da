package org.bookholder.app.footage;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.problem.ProblemException;

/**
 * The result of matching one file with a session.
 *
 * @param file the camera's or recorder's file
 * @param placed its place in the session; empty if it could not be matched
 * @param missed takes that should be in it but were not found; empty if none was found
 * @param problem why it could not be matched; empty if it was
 */
public record FileMatch(
        Path file, Optional<PlacedFootage> placed, List<MissedTake> missed, Optional<ProblemException> problem) {
    /** Copies the list. */
    public FileMatch {
        missed = List.copyOf(missed);
    }
}
