/** Sets a script in rows. */
@NullMarked
package org.bookholder.view.layout;

import org.jspecify.annotations.NullMarked;
