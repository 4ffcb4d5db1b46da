/** Decides the outcome of each line once both ears have heard it, and again for a whole take. */
@NullMarked
package org.bookholder.follow.settle;

import org.jspecify.annotations.NullMarked;
