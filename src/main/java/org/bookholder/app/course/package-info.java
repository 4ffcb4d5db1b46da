/** Services for a course: its board, sessions, plan, and people's marks. */
@NullMarked
package org.bookholder.app.course;

import org.jspecify.annotations.NullMarked;
