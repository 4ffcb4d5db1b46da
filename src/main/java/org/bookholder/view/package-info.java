/**
 * Turns the session's state into the picture of the reading window, without an actual window; start at {@link
 * org.bookholder.view.Scene}. The sub-packages in reading order: {@code input} (keys), {@code settings}, {@code layout}
 * (rows), {@code motion}, {@code cue} (what is shown beside the text), {@code page} (lists in place of the script);
 * {@code gl} draws.
 */
@NullMarked
package org.bookholder.view;

import org.jspecify.annotations.NullMarked;
