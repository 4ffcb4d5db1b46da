/** The list of a session's events, and how each is written as text. */
@NullMarked
package org.bookholder.journal.event;

import org.jspecify.annotations.NullMarked;
