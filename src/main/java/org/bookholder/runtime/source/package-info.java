/** The sources of a reading's sound and text. */
@NullMarked
package org.bookholder.runtime.source;

import org.jspecify.annotations.NullMarked;
