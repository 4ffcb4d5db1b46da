/** Camera and recorder files of a session: matched with it, or made into one. */
@NullMarked
package org.bookholder.app.footage;

import org.jspecify.annotations.NullMarked;
