package org.bookholder.view.settings;

/**
 * Where the reading window opens.
 *
 * @param fullScreen whether it takes a whole monitor
 * @param monitor its number, from 1, in the system's order; the first monitor is used if there are fewer
 * @param width width of the window in screen units, when it is not full screen
 * @param height height of the window, likewise
 * @param visible false to draw without showing a window
 */
public record WindowPlace(boolean fullScreen, int monitor, int width, int height, boolean visible) {
    private static final int USUAL_WIDTH = 1280;
    private static final int USUAL_HEIGHT = 720;

    /** Checks the ranges. */
    public WindowPlace {
        if (monitor < 1) {
            throw new IllegalArgumentException("monitor (" + monitor + ") must be 1 or more");
        }
        if (width < 1 || height < 1) {
            throw new IllegalArgumentException("width (" + width + ") and height (" + height + ") must be positive");
        }
    }

    /** Fills the monitor with this number, from 1. */
    public static WindowPlace fullScreen(int monitor) {
        return new WindowPlace(true, monitor, USUAL_WIDTH, USUAL_HEIGHT, true);
    }

    /** The same place, but filling its monitor. */
    public WindowPlace filled() {
        return new WindowPlace(true, monitor, width, height, visible);
    }

    /** The same place on another monitor. */
    public WindowPlace on(int number) {
        return new WindowPlace(fullScreen, number, width, height, visible);
    }

    /** A window of the default size. */
    public static WindowPlace windowed() {
        return windowed(USUAL_WIDTH, USUAL_HEIGHT);
    }

    /** A window of this size. */
    public static WindowPlace windowed(int width, int height) {
        return new WindowPlace(false, 1, width, height, true);
    }

    /** No visible window, for snapshots. */
    public static WindowPlace hidden(int width, int height) {
        return new WindowPlace(false, 1, width, height, false);
    }
}
