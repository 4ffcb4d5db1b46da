/** The producer's page: sends a session's state, takes actions; start at {@link org.bookholder.desk.Feed}. */
@NullMarked
package org.bookholder.desk;

import org.jspecify.annotations.NullMarked;
