/** Stored sessions opened again to be gone through. */
@NullMarked
package org.bookholder.app.review;

import org.jspecify.annotations.NullMarked;
