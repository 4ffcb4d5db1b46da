/** The cut list in the files that editing programs read. */
@NullMarked
package org.bookholder.handoff.edit;

import org.jspecify.annotations.NullMarked;
