/** Services for stored sessions: their folders, their contents, and the script and limits used to read them. */
@NullMarked
package org.bookholder.app.session;

import org.jspecify.annotations.NullMarked;
