package org.bookholder.app.footage;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A request to turn footage into a session.
 *
 * @param script the lesson's file
 * @param files camera or recorder files, in the order in which they were filmed
 * @param join whether files that are one recording, which the camera split, become one take
 * @param session folder of the session; empty for a new one in the default place
 * @param model the recogniser's model
 */
public record FootageLogRequest(Path script, List<Path> files, boolean join, Optional<Path> session, Path model) {}
