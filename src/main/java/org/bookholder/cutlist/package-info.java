/**
 * A session to the cut: which attempt of each line to use, and where to cut. Begin with {@link
 * org.bookholder.cutlist.CutPlanner}.
 */
@NullMarked
package org.bookholder.cutlist;

import org.jspecify.annotations.NullMarked;
