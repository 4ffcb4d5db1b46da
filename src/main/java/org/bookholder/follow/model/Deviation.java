package org.bookholder.follow.model;

/**
 * A word that was not read as written.
 *
 * @param word word of the line, from 1; for an added word the one that it was said before (one past the last at the end)
 * @param written the script's word, empty for an added one
 * @param said what was said instead, as far as it was understood; empty for a dropped one
 * @param kind what happened
 * @param certainty how sure the call is, 0 to 1
 */
public record Deviation(int word, String written, String said, Kind kind, double certainty) {
    /** What can happen to a word. */
    public enum Kind {
        /** Another word was said. */
        SWAPPED("swapped"),
        /** Nothing was said for it. */
        DROPPED("dropped"),
        /** A word was said that is not written. */
        ADDED("added");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        /** The word for it in every file. */
        public String label() {
            return label;
        }
    }
}
