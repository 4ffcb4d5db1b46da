/** Where each lesson of a course stands, what is to be done next, and what is missing before it can go out. */
@NullMarked
package org.bookholder.course.board;

import org.jspecify.annotations.NullMarked;
