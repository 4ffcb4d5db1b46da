package org.bookholder.app.footage;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Footage that is to become a session.
 *
 * @param script the lesson's file
 * @param files camera or recorder files, in the order in which they were filmed
 * @param session where the session is kept; empty for a new one in the usual place
 * @param model the recogniser's model
 */
public record FootageLogRequest(Path script, List<Path> files, Optional<Path> session, Path model) {}
