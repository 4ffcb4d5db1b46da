/** Recording sessions: what is recorded on which day, with breaks, and why it does not fit if it does not. */
@NullMarked
package org.bookholder.course.shoot;

import org.jspecify.annotations.NullMarked;
