package org.bookholder.app.footage;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A request to turn footage into a session.
 *
 * @param script the lesson's file
 * @param files camera or recorder files, in the order in which they were filmed
 * @param join which files become one take
 * @param session folder of the session; empty for a new one in the default place
 * @param model the recogniser's model
 */
public record FootageLogRequest(Path script, List<Path> files, Join join, Optional<Path> session, Path model) {
    /** Which files become one take. */
    public enum Join {
        /** None: each file is a take of its own. */
        NONE,
        /** Those that are one recording by all that they tell, the time of day among it. */
        BY_TIME,
        /** Those as well that tell no time of day and are numbered one after the other. */
        BY_NUMBERS;

        /** What is wished; to keep all apart counts more. */
        public static Join of(boolean apart, boolean byNumbers) {
            return apart ? NONE : byNumbers ? BY_NUMBERS : BY_TIME;
        }
    }
}
