package org.bookholder.film.plan;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.footage.Channels;
import org.bookholder.footage.Placement;

/**
 * A file in which a take can be heard.
 *
 * @param file the file
 * @param kind what recorded it
 * @param placement where the take lies in it
 * @param rank its place among the files in which the take can be heard, from 0; the least is heard where it has the take
 * @param channels the channels that are heard; empty for those in which a voice is heard best
 */
public record Track(Path file, Kind kind, Placement placement, int rank, Optional<Channels> channels) {
    /** What recorded it, the best first. */
    public enum Kind {
        /** A recorder's file, without a picture. */
        RECORDER("recorder"),
        /** A camera's file. */
        CAMERA("camera"),
        /** The program's own recording of the take. */
        TAKE("the take's recording");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        /** What people call it. */
        public String label() {
            return label;
        }
    }
}
