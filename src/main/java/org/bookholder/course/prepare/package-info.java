/** Preparation before recording: how long lessons will run, and what in them is hard to say. */
@NullMarked
package org.bookholder.course.prepare;

import org.jspecify.annotations.NullMarked;
