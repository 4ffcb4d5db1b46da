/** Where the sound and the text of a reading come from. */
@NullMarked
package org.bookholder.runtime.source;

import org.jspecify.annotations.NullMarked;
