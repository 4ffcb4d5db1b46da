/** A session's state to the producer's page; start at {@link org.bookholder.desk.Feed}. */
@NullMarked
package org.bookholder.desk;

import org.jspecify.annotations.NullMarked;
