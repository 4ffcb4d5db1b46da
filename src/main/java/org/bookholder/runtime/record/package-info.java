/** Saves events and sound while a session runs, and resumes a stored session. */
@NullMarked
package org.bookholder.runtime.record;

import org.jspecify.annotations.NullMarked;
