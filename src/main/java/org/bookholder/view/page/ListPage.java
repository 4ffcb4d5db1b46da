package org.bookholder.view.page;

import java.util.List;
import org.bookholder.view.layout.Geometry;

/**
 * A list shown in place of the script: pickups or keys.
 *
 * @param heading what it is
 * @param under a line beneath the heading
 * @param entries its entries
 * @param wideLead whether leads are words rather than numbers; entries then stand in two columns
 */
public record ListPage(String heading, String under, List<Entry> entries, boolean wideLead) {
    private static final double PLAIN_EMS = 0.76;
    private static final double NOTED_EMS = 1.45;
    private static final double HEAD_EMS = 2.9;

    /** Two columns of keys and what they do have room beside each other with this share of the width. */
    private static final double WIDEST_UNIT = 0.038;

    /** Copies the list. */
    public ListPage {
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

    /** What sizes on the page are told in, in pixels; the list of keys is to be seen as a whole. */
    public double unit(Geometry geometry) {
        double usual = geometry.small() / 0.42;
        double room = geometry.footTop() - 2 * geometry.margin();
        return wideLead
                ? Math.min(
                        usual, Math.min(WIDEST_UNIT * geometry.width(), room / (HEAD_EMS + (rows() + 0.5) * PLAIN_EMS)))
                : usual;
    }

    /** Height of the heading in pixels. */
    public double headHeight(Geometry geometry) {
        return HEAD_EMS * unit(geometry);
    }

    /** Height of one entry in pixels. */
    public double entryHeight(Geometry geometry) {
        return (wideLead ? PLAIN_EMS : NOTED_EMS) * unit(geometry);
    }

    /** How far the page can be moved up, in pixels. */
    double longestScroll(Geometry geometry) {
        double whole = headHeight(geometry) + rows() * entryHeight(geometry);
        return Math.max(0, whole - (geometry.footTop() - geometry.margin()));
    }

    private int rows() {
        return wideLead ? (entries.size() + 1) / 2 : entries.size();
    }
}
