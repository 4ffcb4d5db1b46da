/** Services for reviewing stored sessions. */
@NullMarked
package org.bookholder.app.review;

import org.jspecify.annotations.NullMarked;
