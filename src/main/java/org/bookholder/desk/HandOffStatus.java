package org.bookholder.desk;

import java.util.List;

/**
 * Status of a session's hand-off.
 *
 * @param step how far it is
 * @param folder the folder of the files, for people; it may not exist yet
 * @param files the files in it, sorted by name
 * @param said the result of the last writing, one line for people; empty if there is none
 */
public record HandOffStatus(Step step, String folder, List<Entry> files, String said) {
    /** Copies the list. */
    public HandOffStatus {
        files = List.copyOf(files);
    }

    /** How far a hand-off can be. */
    public enum Step {
        /** Nobody has asked for the files. */
        IDLE,
        /** They are being written. */
        WRITING,
        /** They were written. */
        WRITTEN,
        /** Nothing was written: files exist already, and nobody has confirmed that they may be replaced. */
        IN_THE_WAY,
        /** Nothing was written, because something went wrong. */
        FAILED
    }

    /**
     * A file.
     *
     * @param name its name, without a folder
     * @param bytes its size in bytes
     */
    public record Entry(String name, long bytes) {}
}
