package org.bookholder.course;

import java.util.Arrays;
import java.util.List;

/**
 * How much there is to edit in a lesson.
 *
 * <p>The hours are those of a university's course team for a video of <em>up to</em> 10 minutes, so also of a shorter one: 1 hour of
 * processing for the presenter alone, 5 with half of it slides, 16 with half of it moving (Crosslin, ed., Creating Online Learning
 * Experiences, chapter 10, University of Texas at Arlington). Common practice; replace them by your own figures.
 */
public enum LessonKind {
    /** The presenter alone. */
    PRESENTER("presenter", "the presenter alone", 1),
    /** Half of it slides or stills. */
    SLIDES("slides", "half of it slides or stills", 5),
    /** Half of it moving pictures: screen recordings, close-ups, animation. */
    MOVING("moving", "half of it moving pictures", 16);

    /** Up to how many minutes a lesson takes the hours of a short one; a longer one takes more in proportion. */
    public static final double SHORT_MINUTES = 10;

    private final String label;
    private final String words;
    private final double hours;

    LessonKind(String label, String words, double hours) {
        this.label = label;
        this.words = words;
        this.hours = hours;
    }

    /** Its name in a course's settings. */
    public String label() {
        return label;
    }

    /** What it means, for people. */
    public String words() {
        return words;
    }

    /** Editing hours for a lesson of up to {@link #SHORT_MINUTES}, unless the course says otherwise. */
    public double hours() {
        return hours;
    }

    /** How long its edit takes, unless the course says otherwise. */
    public EditingRate rate() {
        return new EditingRate(hours, hours / SHORT_MINUTES);
    }

    /** All names. */
    public static List<String> labels() {
        return Arrays.stream(values()).map(LessonKind::label).toList();
    }

    /** The kind with that name. */
    public static LessonKind of(String label) {
        return Arrays.stream(values())
                .filter(kind -> kind.label.equals(label))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("label (" + label + ") must be one of " + labels()));
    }
}
