/** Recognised words to the reading position, and to the outcome of each line. */
@NullMarked
package org.bookholder.follow;

import org.jspecify.annotations.NullMarked;
