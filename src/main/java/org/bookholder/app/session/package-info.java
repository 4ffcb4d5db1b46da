/** Stored sessions: where they lie, what is in them, and the script and limits they are read with. */
@NullMarked
package org.bookholder.app.session;

import org.jspecify.annotations.NullMarked;
