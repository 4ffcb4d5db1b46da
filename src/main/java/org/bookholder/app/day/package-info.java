/** A presenter's day: what was read in all sessions since the last long rest. */
@NullMarked
package org.bookholder.app.day;

import org.jspecify.annotations.NullMarked;
