package org.bookholder.cli;

import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;

/**
 * How a presenter wants the reading window.
 *
 * @param settings what it shows, how large, and what moves it
 * @param place where it opens
 */
record WindowWish(WindowSettings settings, WindowPlace place) {}
