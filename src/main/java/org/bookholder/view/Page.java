package org.bookholder.view;

import java.util.List;

/**
 * A list shown in place of the script: pickups or keys.
 *
 * @param heading what it is
 * @param under a line beneath the heading
 * @param entries its entries
 * @param wideLead whether leads are words rather than numbers; entries then stand in two columns
 */
public record Page(String heading, String under, List<Entry> entries, boolean wideLead) {
    private static final double PLAIN_EMS = 0.76;
    private static final double NOTED_EMS = 1.45;
    private static final double HEAD_EMS = 2.9;

    /** Copies the list. */
    public Page {
        entries = List.copyOf(entries);
    }

    /**
     * One entry.
     *
     * @param lead number or key
     * @param text what it is about
     * @param call a word that says what became of it; empty if there is none
     * @param note more about it, in small; empty if there is none
     */
    public record Entry(String lead, String text, String call, String note) {}

    /** Height of the heading in pixels. */
    public double headHeight(Geometry geometry) {
        return HEAD_EMS * geometry.small() / 0.42;
    }

    /** Height of one entry in pixels. */
    public double entryHeight(Geometry geometry) {
        return (wideLead ? PLAIN_EMS : NOTED_EMS) * geometry.small() / 0.42;
    }

    /** How far the page can be moved up, in pixels. */
    double longestScroll(Geometry geometry) {
        int rows = wideLead ? (entries.size() + 1) / 2 : entries.size();
        double whole = headHeight(geometry) + rows * entryHeight(geometry);
        return Math.max(0, whole - (geometry.footTop() - geometry.margin()));
    }
}
