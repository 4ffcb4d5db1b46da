/** Words and their times to words per minute; arithmetic without state outside the values. */
@NullMarked
package org.bookholder.pace;

import org.jspecify.annotations.NullMarked;
