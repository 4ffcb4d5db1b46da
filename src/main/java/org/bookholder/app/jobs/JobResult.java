package org.bookholder.app.jobs;

import java.util.List;

/**
 * What came of a job.
 *
 * @param said what came of it, one sentence
 * @param rows what was found, in the words of the command that does the same
 * @param links where to go on from here
 */
public record JobResult(String said, List<Row> rows, List<Link> links) {
    /** Copies the lists. */
    public JobResult {
        rows = List.copyOf(rows);
        links = List.copyOf(links);
    }

    /**
     * One thing that was found.
     *
     * @param mark how much it matters, one word; may be empty
     * @param where the place or time it is about; may be empty
     * @param what what was found
     * @param more what to do about it, or further figures; may be empty
     */
    public record Row(String mark, String where, String what, String more) {
        /** A plain line. */
        public static Row line(String what) {
            return new Row("", "", what, "");
        }

        /** A line that calls for something to be done. */
        public static Row warning(String what) {
            return new Row("look", "", what, "");
        }
    }

    /**
     * Where to go on.
     *
     * @param title what is there
     * @param address its address below home's own, or a folder's path
     * @param kind what there is
     */
    public record Link(String title, String address, Kind kind) {
        /** What a link leads to. */
        public enum Kind {
            /** A page of the program. */
            PAGE,
            /** A file to be saved. */
            FILE,
            /** A folder on this machine. */
            FOLDER
        }
    }
}
