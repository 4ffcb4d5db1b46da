/** What to do in a course today, and why. */
@NullMarked
package org.bookholder.course.agenda;

import org.jspecify.annotations.NullMarked;
