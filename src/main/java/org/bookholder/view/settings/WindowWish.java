package org.bookholder.view.settings;

/**
 * How the presenter wants the reading window: its settings and its place.
 *
 * @param settings what it shows, how large, and what moves it
 * @param place where it opens
 */
public record WindowWish(WindowSettings settings, WindowPlace place) {
    /** The default settings, in a window. */
    public static WindowWish defaults() {
        return new WindowWish(WindowSettings.defaults(), WindowPlace.windowed());
    }
}
