/** The events of a session, one after another, and how each stands as text. */
@NullMarked
package org.bookholder.journal.event;

import org.jspecify.annotations.NullMarked;
