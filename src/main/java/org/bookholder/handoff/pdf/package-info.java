/** Pages to print. */
@NullMarked
package org.bookholder.handoff.pdf;

import org.jspecify.annotations.NullMarked;
