/** Judges one reading of a line: which words were not read as written, and how certain that is. */
@NullMarked
package org.bookholder.follow.judge;

import org.jspecify.annotations.NullMarked;
