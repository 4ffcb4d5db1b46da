/** Plans recording sessions: what to record on which day, with breaks, and the reasons if not everything fits. */
@NullMarked
package org.bookholder.course.shoot;

import org.jspecify.annotations.NullMarked;
