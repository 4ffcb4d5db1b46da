/**
 * Session events and take audio to disk and back, safe against a kill at any moment; start at
 * {@link org.bookholder.journal.SessionFolder}. The rooms in reading order: {@code event} (events as text),
 * {@code sqlite} (where they are kept).
 */
@NullMarked
package org.bookholder.journal;

import org.jspecify.annotations.NullMarked;
