/**
 * Turns session state into files for the people who continue to work with it: pickup list, notes, trace, and the
 * editor's files.
 */
@NullMarked
package org.bookholder.handoff;

import org.jspecify.annotations.NullMarked;
