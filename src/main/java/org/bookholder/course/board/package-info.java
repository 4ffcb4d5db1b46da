/** The state of each lesson of a course, its next step, and what is missing before it can be published. */
@NullMarked
package org.bookholder.course.board;

import org.jspecify.annotations.NullMarked;
