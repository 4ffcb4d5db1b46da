/** A script set in rows. */
@NullMarked
package org.bookholder.view.layout;

import org.jspecify.annotations.NullMarked;
