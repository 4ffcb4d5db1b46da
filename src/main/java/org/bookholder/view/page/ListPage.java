package org.bookholder.view.page;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.view.layout.Geometry;
import org.bookholder.wording.Cautions;

/**
 * A list shown in place of the script: pickups or keys.
 *
 * @param heading its heading
 * @param under a line below the heading
 * @param choices what can be done now, a line each; may be empty
 * @param cautions what stands below the choices, or behind the entries where it would push them off the page
 * @param entries its entries
 * @param wideLead whether leads are words instead of numbers; entries are then set in two columns
 */
public record ListPage(
        String heading,
        String under,
        List<String> choices,
        List<String> cautions,
        List<Entry> entries,
        boolean wideLead) {
    private static final double PLAIN_EMS = 0.76;
    private static final double KEYS_HEAD_EMS = 2.9;
    private static final double KEYS_LEFT = 0.09;

    /** Average width of a letter in ems, generously, measured over the cautions in Inter. */
    private static final double LETTER_EMS = 0.46;

    /** Largest unit, as a fraction of the picture's height and width. */
    private static final double MOST_OF_HEIGHT = 1 / 13.44;

    private static final double MOST_OF_WIDTH = 1 / 21.84;

    /** Distance of rows in the head of the page and in an entry, in multiples of their size. */
    private static final double ROW = 1.3;

    /** How much of the page its head may take before the cautions go behind the entries. */
    private static final double MOST_OF_PAGE = 0.55;

    /** Distance between entries, in units. */
    private static final double APART_EMS = 0.35;

    /** Largest unit at which two columns of keys fit side by side, as a fraction of the width. */
    private static final double WIDEST_UNIT = 0.038;

    /** Copies the list. */
    public ListPage {
        choices = List.copyOf(choices);
        cautions = List.copyOf(cautions);
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
        double usual =
                Math.min(geometry.em(), Math.min(MOST_OF_HEIGHT * geometry.height(), MOST_OF_WIDTH * geometry.width()));
        double room = geometry.footTop() - 2 * geometry.margin();
        return wideLead
                ? Math.min(
                        usual,
                        Math.min(WIDEST_UNIT * geometry.width(), room / (KEYS_HEAD_EMS + (rows() + 0.5) * PLAIN_EMS)))
                : usual;
    }

    /** Size of an entry's main text, in pixels: never less than what is legible from where the script is read. */
    public double textSize(Geometry geometry) {
        return wideLead ? 0.4 * unit(geometry) : Math.max(0.52 * unit(geometry), geometry.small());
    }

    /** Size of all other text below the heading, in pixels. */
    public double smallSize(Geometry geometry) {
        return wideLead ? 0.42 * unit(geometry) : Math.max(0.42 * unit(geometry), geometry.small());
    }

    /** Size of the heading, in pixels. */
    public double headingSize(Geometry geometry) {
        double usual = 0.78 * unit(geometry);
        return wideLead ? usual : Math.max(usual, 1.15 * geometry.small());
    }

    /** Distance in pixels from the page's top to the first row below the heading. */
    public double headTop(Geometry geometry) {
        return 1.5 * headingSize(geometry) + 0.6 * smallSize(geometry);
    }

    /** Distance of rows in the head, in pixels. */
    public double headRow(Geometry geometry) {
        return ROW * smallSize(geometry);
    }

    /** Distance in pixels from the page's top to the first entry. */
    public double headHeight(Geometry geometry) {
        return headHeight(headRows(geometry), geometry);
    }

    private double headHeight(List<String> texts, Geometry geometry) {
        int rows = rowsOf(under, mostLetters(geometry)) + rowsOf(texts, geometry);
        return headTop(geometry) + rows * headRow(geometry) + APART_EMS * unit(geometry);
    }

    /** What stands below the line under the heading. */
    public List<String> headRows(Geometry geometry) {
        List<String> rows = new ArrayList<>(choices);
        if (isRoomy(geometry)) {
            rows.addAll(cautions);
        } else if (!cautions.isEmpty()) {
            rows.add(Cautions.shortest());
        }
        return rows;
    }

    /** What stands behind the entries. */
    public List<String> footRows(Geometry geometry) {
        return isRoomy(geometry) ? List.of() : cautions;
    }

    /** Whether the cautions leave half of the page to the entries. */
    private boolean isRoomy(Geometry geometry) {
        List<String> all = new ArrayList<>(choices);
        all.addAll(cautions);
        return entries.isEmpty()
                || 2 * geometry.margin() + headHeight(all, geometry) <= MOST_OF_PAGE * geometry.footTop();
    }

    /** How many letters fit in a row of the head. */
    public int mostLetters(Geometry geometry) {
        double room = geometry.width() - left(geometry) - geometry.margin();
        return Math.max(8, (int) (room / (LETTER_EMS * smallSize(geometry))));
    }

    /** Left edge of the page, in pixels. */
    public double left(Geometry geometry) {
        return wideLead ? KEYS_LEFT * geometry.width() : Math.min(geometry.columnLeft(), 0.14 * geometry.width());
    }

    /** Where the row of a text ends that begins at {@code from}: between two words where there are several. */
    public static int rowEnd(String text, int from, int mostLetters) {
        if (text.length() - from <= mostLetters) {
            return text.length();
        }
        int space = text.lastIndexOf(' ', from + mostLetters);
        return space > from ? space : from + mostLetters;
    }

    private int rowsOf(List<String> texts, Geometry geometry) {
        int most = mostLetters(geometry);
        return texts.stream().mapToInt(text -> rowsOf(text, most)).sum();
    }

    private static int rowsOf(String text, int most) {
        int rows = 0;
        for (int at = 0; at < text.length(); at = rowEnd(text, at, most) + 1) {
            rows++;
        }
        return rows;
    }

    /** Distance in pixels from an entry's main text to its note. */
    public double noteBelow(Geometry geometry) {
        return 0.5 * ROW * (textSize(geometry) + smallSize(geometry));
    }

    /** Height of one entry in pixels. */
    public double entryHeight(Entry entry, Geometry geometry) {
        if (wideLead) {
            return PLAIN_EMS * unit(geometry);
        }
        double note = entry.note().isEmpty() ? 0 : ROW * smallSize(geometry);
        return ROW * textSize(geometry) + note + APART_EMS * unit(geometry);
    }

    /** How far the page can be scrolled, in pixels. */
    double longestScroll(Geometry geometry) {
        double whole = headHeight(geometry);
        for (int i = 0; i < rows(); i++) {
            whole += entryHeight(entries.get(i), geometry);
        }
        whole += rowsOf(footRows(geometry), geometry) * headRow(geometry);
        return Math.max(0, whole - (geometry.footTop() - geometry.margin()));
    }

    private int rows() {
        return wideLead ? (entries.size() + 1) / 2 : entries.size();
    }
}
