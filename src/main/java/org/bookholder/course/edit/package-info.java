/** Weeks of editing as planned and as they went, and what the course costs. */
@NullMarked
package org.bookholder.course.edit;

import org.jspecify.annotations.NullMarked;
