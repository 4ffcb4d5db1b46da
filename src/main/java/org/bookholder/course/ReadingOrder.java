package org.bookholder.course;

import java.util.Arrays;
import java.util.List;

/** In which order the lessons of a course are recorded. */
public enum ReadingOrder {
    /** Whatever finishes early; on each day the hardest first. */
    FREE("free", "as it finishes earliest; on each day the hardest first"),
    /** As they stand in the course. */
    KEPT("kept", "as the lessons stand in the course"),
    /** The hardest lessons on the first days. */
    HARD_EARLY("hard early", "the hardest lessons on the first days");

    private final String label;
    private final String words;

    ReadingOrder(String label, String words) {
        this.label = label;
        this.words = words;
    }

    /** Its name in a course's settings. */
    public String label() {
        return label;
    }

    /** What it means, for people. */
    public String words() {
        return words;
    }

    /** All names. */
    public static List<String> labels() {
        return Arrays.stream(values()).map(ReadingOrder::label).toList();
    }

    /** The order with that name. */
    public static ReadingOrder of(String label) {
        return Arrays.stream(values())
                .filter(order -> order.label.equals(label))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("label (" + label + ") must be one of " + labels()));
    }
}
