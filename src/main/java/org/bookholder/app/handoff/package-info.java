/** A stored session to the files that its editor needs. */
@NullMarked
package org.bookholder.app.handoff;

import org.jspecify.annotations.NullMarked;
