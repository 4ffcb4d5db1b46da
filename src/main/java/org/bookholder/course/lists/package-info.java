/** Lists of what to show, to set up and to have ready for a launch: found in a course's files, edited by people, never a stop. */
@NullMarked
package org.bookholder.course.lists;

import org.jspecify.annotations.NullMarked;
