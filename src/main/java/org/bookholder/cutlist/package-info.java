/**
 * Turns a session's state into the cut: which attempt of each line to use, and where to cut. Start at {@link
 * org.bookholder.cutlist.CutPlanner}.
 */
@NullMarked
package org.bookholder.cutlist;

import org.jspecify.annotations.NullMarked;
