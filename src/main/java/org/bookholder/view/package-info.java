/** Session state to the picture of the reading window, without a window: layout, motion, cues. */
@NullMarked
package org.bookholder.view;

import org.jspecify.annotations.NullMarked;
