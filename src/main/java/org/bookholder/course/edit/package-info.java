/** Weeks of editing, what became of them, and what it all costs. */
@NullMarked
package org.bookholder.course.edit;

import org.jspecify.annotations.NullMarked;
