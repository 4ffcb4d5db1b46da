/**
 * A cut counted in frames: which frames of which file go where; see {@link org.bookholder.handoff.timeline.Timeline}.
 */
@NullMarked
package org.bookholder.handoff.timeline;

import org.jspecify.annotations.NullMarked;
