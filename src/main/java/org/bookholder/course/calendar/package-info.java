/** Recording sessions for a calendar program. */
@NullMarked
package org.bookholder.course.calendar;

import org.jspecify.annotations.NullMarked;
