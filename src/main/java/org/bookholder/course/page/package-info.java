/** A course as a page for a browser or for print. */
@NullMarked
package org.bookholder.course.page;

import org.jspecify.annotations.NullMarked;
