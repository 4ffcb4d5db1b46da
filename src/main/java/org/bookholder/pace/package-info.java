/** Computes words per minute from words and their times; no state outside the values. */
@NullMarked
package org.bookholder.pace;

import org.jspecify.annotations.NullMarked;
