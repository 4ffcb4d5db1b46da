/** Weeks of editing as planned and as they really went, and the costs of the course. */
@NullMarked
package org.bookholder.course.edit;

import org.jspecify.annotations.NullMarked;
