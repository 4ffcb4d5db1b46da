/** Turns reading time, on-camera time and stumbling into advice on breaks. */
@NullMarked
package org.bookholder.fatigue;

import org.jspecify.annotations.NullMarked;
