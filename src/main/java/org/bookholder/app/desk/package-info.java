/** A session that is running or stored, opened to the pages of its producers. */
@NullMarked
package org.bookholder.app.desk;

import org.jspecify.annotations.NullMarked;
