/** Services that open a running or stored session to producers' pages. */
@NullMarked
package org.bookholder.app.desk;

import org.jspecify.annotations.NullMarked;
