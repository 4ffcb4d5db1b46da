/** Takes of a kept session that were broken off, followed again from their recordings. */
@NullMarked
package org.bookholder.runtime.recovery;

import org.jspecify.annotations.NullMarked;
