package org.bookholder.desk;

import java.util.List;

/**
 * How the editor's files of a session stand.
 *
 * @param step what has become of them
 * @param folder where they lie, or will, for people
 * @param files what lies there, sorted by name
 * @param said what came of the last writing, one line for people; empty if there is nothing to tell
 */
public record HandOffStatus(Step step, String folder, List<Entry> files, String said) {
    /** Copies the list. */
    public HandOffStatus {
        files = List.copyOf(files);
    }

    /** What can have become of them. */
    public enum Step {
        /** Nobody has asked for them. */
        IDLE,
        /** They are being written. */
        WRITING,
        /** They were written. */
        WRITTEN,
        /** Nothing was written: files are there already, and nobody has said that they may be replaced. */
        IN_THE_WAY,
        /** Nothing was written, because something went wrong. */
        FAILED
    }

    /**
     * A file.
     *
     * @param name its name, without a folder
     * @param bytes how long it is
     */
    public record Entry(String name, long bytes) {}
}
