package org.bookholder.follow.model;

/**
 * A word that was not read as written.
 *
 * @param word number of the word in its line, from 1; for an added word, that of the word after it (one past the last
 *     at the end)
 * @param written the script's word, empty for an added one
 * @param said what was said instead, as far as it was understood; empty for a dropped one
 * @param kind what happened
 * @param certainty how certain this is, 0 to 1
 */
public record Deviation(int word, String written, String said, Kind kind, double certainty) {
    /** What can happen to a word. */
    public enum Kind {
        /** Another word was said. */
        SWAPPED,
        /** Nothing was said in its place. */
        DROPPED,
        /** A word was said that is not in the script. */
        ADDED
    }
}
