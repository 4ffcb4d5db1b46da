/**
 * Session state to the picture of the reading window, without a window; start at {@link org.bookholder.view.Scene}. The
 * rooms in reading order: {@code input} (keys), {@code settings}, {@code layout} (rows), {@code motion},
 * {@code cue} (what stands beside the text), {@code page} (lists in place of the script); {@code gl} draws.
 */
@NullMarked
package org.bookholder.view;

import org.jspecify.annotations.NullMarked;
