package org.bookholder.app.footage;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.problem.ProblemException;

/**
 * The result of matching one file with a session.
 *
 * @param file the camera's or recorder's file
 * @param placed its place in the session; empty if it could not be matched
 * @param problem why it could not be matched; empty if it was
 */
public record FileMatch(Path file, Optional<PlacedFootage> placed, Optional<ProblemException> problem) {}
