/** Session state to files and text for the people who work on: pickup list, notes, trace. */
@NullMarked
package org.bookholder.handoff;

import org.jspecify.annotations.NullMarked;
