package org.bookholder.app.home;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What home begins with.
 *
 * @param userHome the folder below which folders can be chosen
 * @param course the folder of the course to open; empty for the one that was open last
 */
public record HomeRequest(Path userHome, Optional<Path> course) {}
