/**
 * Session state to files for the people who go on working with it: pickup list, notes, trace, and the editor's files.
 */
@NullMarked
package org.bookholder.handoff;

import org.jspecify.annotations.NullMarked;
