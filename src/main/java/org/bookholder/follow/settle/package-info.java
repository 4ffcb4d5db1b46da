/** The outcome of each line, once both ears have heard it, and again over a whole take. */
@NullMarked
package org.bookholder.follow.settle;

import org.jspecify.annotations.NullMarked;
