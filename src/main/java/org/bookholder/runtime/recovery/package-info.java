/** Follows interrupted takes of a stored session again from their recordings. */
@NullMarked
package org.bookholder.runtime.recovery;

import org.jspecify.annotations.NullMarked;
