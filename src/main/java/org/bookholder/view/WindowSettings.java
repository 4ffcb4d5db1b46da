package org.bookholder.view;

import java.util.OptionalDouble;
import org.bookholder.session.Mover;

/**
 * How a presenter wants the reading window.
 *
 * @param distance from the eyes to the screen in mm, 200 to 20,000
 * @param screenHeight height of the screen's picture in mm; empty to believe the monitor
 * @param arcMinutes capital height as seen, in minutes of arc, 16 to 90
 * @param size type size in pixels, which overrides the three before; empty to go by distance
 * @param columnWords words to a row, about, 3 to 12
 * @param eyeLine where the row being read stands, as a share of the picture's height from the top, 0.1 to 0.8
 * @param mirrored left and right swapped, for reading by one reflection in a pane of glass
 * @param upsideDown turned top to bottom, for a screen that hangs the wrong way up
 * @param cues whether pace, figures and pickups are shown beside the text
 * @param way what moves the text
 */
public record WindowSettings(
        double distance,
        OptionalDouble screenHeight,
        double arcMinutes,
        OptionalDouble size,
        int columnWords,
        double eyeLine,
        boolean mirrored,
        boolean upsideDown,
        boolean cues,
        Mover way) {
    /** Larger than the 20 to 22 minutes preferred for reading at a desk: the eyes must not be seen to travel. */
    public static final double DEFAULT_ARC_MINUTES = 34;

    private static final int MOST_WORDS = 12;
    private static final int LEAST_WORDS = 3;

    /** Checks the ranges. */
    public WindowSettings {
        check("distance", distance, 200, 20_000);
        check("arcMinutes", arcMinutes, TypeSize.LEAST_ARC_MINUTES, 90);
        check("columnWords", columnWords, LEAST_WORDS, MOST_WORDS);
        check("eyeLine", eyeLine, 0.1, 0.8);
        size.ifPresent(s -> check("size", s, 8, 1000));
        screenHeight.ifPresent(h -> check("screenHeight", h, 20, 10_000));
    }

    /** Read from 1.5 m, six words to a row, the eye-line a third from the top, moved by the voice. */
    public static WindowSettings defaults() {
        return new WindowSettings(
                1500,
                OptionalDouble.empty(),
                DEFAULT_ARC_MINUTES,
                OptionalDouble.empty(),
                6,
                1.0 / 3,
                false,
                false,
                true,
                Mover.VOICE);
    }

    /** The same, read from {@code distance} mm. */
    public WindowSettings withDistance(double value) {
        return new WindowSettings(
                value, screenHeight, arcMinutes, size, columnWords, eyeLine, mirrored, upsideDown, cues, way);
    }

    /** The same, on a screen whose picture is {@code value} mm high. */
    public WindowSettings withScreenHeight(double value) {
        return new WindowSettings(
                distance,
                OptionalDouble.of(value),
                arcMinutes,
                size,
                columnWords,
                eyeLine,
                mirrored,
                upsideDown,
                cues,
                way);
    }

    /** The same with type of {@code value} pixels, whatever the distance. */
    public WindowSettings withSize(double value) {
        return new WindowSettings(
                distance,
                screenHeight,
                arcMinutes,
                OptionalDouble.of(value),
                columnWords,
                eyeLine,
                mirrored,
                upsideDown,
                cues,
                way);
    }

    /** The same with about {@code value} words to a row, brought into range. */
    public WindowSettings withColumnWords(int value) {
        int words = Math.max(LEAST_WORDS, Math.min(MOST_WORDS, value));
        return new WindowSettings(
                distance, screenHeight, arcMinutes, size, words, eyeLine, mirrored, upsideDown, cues, way);
    }

    /** The same with the row being read at {@code value} of the height. */
    public WindowSettings withEyeLine(double value) {
        return new WindowSettings(
                distance, screenHeight, arcMinutes, size, columnWords, value, mirrored, upsideDown, cues, way);
    }

    /** The same, mirrored or not. */
    public WindowSettings withMirrored(boolean value) {
        return new WindowSettings(
                distance, screenHeight, arcMinutes, size, columnWords, eyeLine, value, upsideDown, cues, way);
    }

    /** The same, turned top to bottom or not. */
    public WindowSettings withUpsideDown(boolean value) {
        return new WindowSettings(
                distance, screenHeight, arcMinutes, size, columnWords, eyeLine, mirrored, value, cues, way);
    }

    /** The same with or without cues beside the text. */
    public WindowSettings withCues(boolean value) {
        return new WindowSettings(
                distance, screenHeight, arcMinutes, size, columnWords, eyeLine, mirrored, upsideDown, value, way);
    }

    /** The same, moved by {@code value}. */
    public WindowSettings withWay(Mover value) {
        return new WindowSettings(
                distance, screenHeight, arcMinutes, size, columnWords, eyeLine, mirrored, upsideDown, cues, value);
    }

    /** The same with larger or smaller type, brought into range. */
    WindowSettings scaled(double factor) {
        if (size.isPresent()) {
            return withSize(Math.max(8, Math.min(1000, size.getAsDouble() * factor)));
        }
        double minutes = Math.max(TypeSize.LEAST_ARC_MINUTES, Math.min(90, arcMinutes * factor));
        return new WindowSettings(
                distance, screenHeight, minutes, size, columnWords, eyeLine, mirrored, upsideDown, cues, way);
    }

    private static void check(String name, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(name + " (" + value + ") must be from " + least + " to " + most);
        }
    }
}
