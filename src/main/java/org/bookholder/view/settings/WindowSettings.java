package org.bookholder.view.settings;

import java.util.EnumSet;
import java.util.OptionalDouble;
import java.util.Set;
import org.bookholder.session.Mover;
import org.bookholder.view.input.KeyMap;

/**
 * What the reading window shows and how, as the presenter wants it.
 *
 * @param distance from the eyes to the screen in mm, 200 to 20,000
 * @param screenHeight height of the screen's picture in mm; empty to use what the monitor reports
 * @param arcMinutes apparent capital height in minutes of arc, 16 to 90
 * @param size type size in pixels, which overrides the three values above; empty to use them
 * @param columnWords approximate number of words in a row, 3 to 12
 * @param eyeLine height at which the row being read stands, as a fraction of the picture's height from the top, 0.1 to
 *     0.8
 * @param mirrored whether left and right are swapped, for reading by reflection in a pane of glass
 * @param upsideDown whether the picture is upside down, for a screen that hangs the wrong way up
 * @param cues what is shown beside the text
 * @param way what moves the text
 * @param countIn length of the count-in before a take, in seconds, 0 to 10; 0 for none
 * @param keys which key does what
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
        Set<Cue> cues,
        Mover way,
        int countIn,
        KeyMap keys) {
    /** Larger than the 20 to 22 minutes preferred for reading at a desk, because the text moves and the eyes tire. */
    public static final double DEFAULT_ARC_MINUTES = 34;

    private static final int MOST_WORDS = 12;
    private static final int LEAST_WORDS = 3;
    private static final double LARGEST_MINUTES = 90;

    /** Checks the ranges, and copies the set. */
    public WindowSettings {
        check("distance", distance, 200, 20_000);
        check("arcMinutes", arcMinutes, TypeSize.LEAST_ARC_MINUTES, LARGEST_MINUTES);
        check("columnWords", columnWords, LEAST_WORDS, MOST_WORDS);
        check("eyeLine", eyeLine, 0.1, 0.8);
        check("countIn", countIn, 0, 10);
        size.ifPresent(s -> check("size", s, 8, 1000));
        screenHeight.ifPresent(h -> check("screenHeight", h, 20, 10_000));
        cues = Set.copyOf(cues);
    }

    /**
     * The defaults: read from 1.5 m, six words in a row, eye-line a third from the top, moved by the voice, all cues
     * shown.
     */
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
                EnumSet.allOf(Cue.class),
                Mover.VOICE,
                0,
                KeyMap.usual());
    }

    /** The same, read from {@code value} mm. */
    public WindowSettings withDistance(double value) {
        Copy copy = new Copy(this);
        copy.newDistance = value;
        return copy.done();
    }

    /** The same, on a screen whose picture is {@code value} mm high. */
    public WindowSettings withScreenHeight(double value) {
        Copy copy = new Copy(this);
        copy.newScreenHeight = OptionalDouble.of(value);
        return copy.done();
    }

    /** The same with an apparent capital height of {@code value} minutes of arc. */
    public WindowSettings withArcMinutes(double value) {
        Copy copy = new Copy(this);
        copy.newArcMinutes = value;
        return copy.done();
    }

    /** The same with type of {@code value} pixels, whatever the distance. */
    public WindowSettings withSize(double value) {
        Copy copy = new Copy(this);
        copy.newSize = OptionalDouble.of(value);
        return copy.done();
    }

    /** The same with the type size derived from the distance. */
    WindowSettings withoutSize() {
        Copy copy = new Copy(this);
        copy.newSize = OptionalDouble.empty();
        return copy.done();
    }

    /** The same with about {@code value} words in a row, clamped to the range. */
    public WindowSettings withColumnWords(int value) {
        Copy copy = new Copy(this);
        copy.newColumnWords = Math.max(LEAST_WORDS, Math.min(MOST_WORDS, value));
        return copy.done();
    }

    /** The same with the row being read at this fraction of the height. */
    public WindowSettings withEyeLine(double value) {
        Copy copy = new Copy(this);
        copy.newEyeLine = value;
        return copy.done();
    }

    /** The same, mirrored or not. */
    public WindowSettings withMirrored(boolean value) {
        Copy copy = new Copy(this);
        copy.newMirrored = value;
        return copy.done();
    }

    /** The same, upside down or not. */
    public WindowSettings withUpsideDown(boolean value) {
        Copy copy = new Copy(this);
        copy.newUpsideDown = value;
        return copy.done();
    }

    /** The same with exactly these cues. */
    public WindowSettings withCues(Set<Cue> value) {
        Copy copy = new Copy(this);
        copy.newCues = value;
        return copy.done();
    }

    /** The same with the text moved by {@code value}. */
    public WindowSettings withWay(Mover value) {
        Copy copy = new Copy(this);
        copy.newWay = value;
        return copy.done();
    }

    /** The same with a count-in of {@code value} seconds. */
    public WindowSettings withCountIn(int value) {
        Copy copy = new Copy(this);
        copy.newCountIn = value;
        return copy.done();
    }

    /** The same with these keys. */
    public WindowSettings withKeys(KeyMap value) {
        Copy copy = new Copy(this);
        copy.newKeys = value;
        return copy.done();
    }

    /** The same with larger or smaller type, clamped to the range. */
    public WindowSettings scaled(double factor) {
        if (size.isPresent()) {
            return withSize(Math.max(8, Math.min(1000, size.getAsDouble() * factor)));
        }
        return withArcMinutes(Math.max(TypeSize.LEAST_ARC_MINUTES, Math.min(LARGEST_MINUTES, arcMinutes * factor)));
    }

    private static void check(String name, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(name + " (" + value + ") must be from " + least + " to " + most);
        }
    }

    /** A mutable copy in which one setting is changed. */
    private static final class Copy {
        private double newDistance;
        private OptionalDouble newScreenHeight;
        private double newArcMinutes;
        private OptionalDouble newSize;
        private int newColumnWords;
        private double newEyeLine;
        private boolean newMirrored;
        private boolean newUpsideDown;
        private Set<Cue> newCues;
        private Mover newWay;
        private int newCountIn;
        private KeyMap newKeys;

        Copy(WindowSettings from) {
            newDistance = from.distance;
            newScreenHeight = from.screenHeight;
            newArcMinutes = from.arcMinutes;
            newSize = from.size;
            newColumnWords = from.columnWords;
            newEyeLine = from.eyeLine;
            newMirrored = from.mirrored;
            newUpsideDown = from.upsideDown;
            newCues = from.cues;
            newWay = from.way;
            newCountIn = from.countIn;
            newKeys = from.keys;
        }

        WindowSettings done() {
            return new WindowSettings(
                    newDistance,
                    newScreenHeight,
                    newArcMinutes,
                    newSize,
                    newColumnWords,
                    newEyeLine,
                    newMirrored,
                    newUpsideDown,
                    newCues,
                    newWay,
                    newCountIn,
                    newKeys);
        }
    }
}
