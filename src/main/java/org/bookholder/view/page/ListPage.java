package org.bookholder.view.page;

import java.util.List;
import org.bookholder.view.layout.Geometry;

/**
 * A list shown in place of the script: pickups or keys.
 *
 * @param heading its heading
 * @param under a line below the heading
 * @param choices what can be done now, a line each; may be empty
 * @param entries its entries
 * @param wideLead whether leads are words instead of numbers; entries are then set in two columns
 */
public record ListPage(String heading, String under, List<String> choices, List<Entry> entries, boolean wideLead) {
    private static final double PLAIN_EMS = 0.76;
    private static final double NOTED_EMS = 1.45;
    private static final double HEAD_EMS = 2.9;

    /** Height of a choice in units. */
    public static final double CHOICE_EMS = 0.72;

    /** Largest unit at which two columns of keys fit side by side, as a fraction of the width. */
    private static final double WIDEST_UNIT = 0.038;

    /** Copies the list. */
    public ListPage {
        choices = List.copyOf(choices);
        entries = List.copyOf(entries);
    }

    /**
     * One entry.
     *
     * @param lead number or key
     * @param text main text
     * @param call one word for the outcome; empty if there is none
     * @param note details in small type; empty if there are none
     */
    public record Entry(String lead, String text, String call, String note) {}

    /** The unit for sizes on the page, in pixels; chosen so that the whole list of keys fits. */
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
        return (HEAD_EMS + CHOICE_EMS * choices.size()) * unit(geometry);
    }

    /** Height of one entry in pixels. */
    public double entryHeight(Geometry geometry) {
        return (wideLead ? PLAIN_EMS : NOTED_EMS) * unit(geometry);
    }

    /** How far the page can be scrolled, in pixels. */
    double longestScroll(Geometry geometry) {
        double whole = headHeight(geometry) + rows() * entryHeight(geometry);
        return Math.max(0, whole - (geometry.footTop() - geometry.margin()));
    }

    private int rows() {
        return wideLead ? (entries.size() + 1) / 2 : entries.size();
    }
}
