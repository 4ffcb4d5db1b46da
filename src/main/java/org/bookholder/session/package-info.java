/** Turns events into one state; start at {@link org.bookholder.session.Session}. */
@NullMarked
package org.bookholder.session;

import org.jspecify.annotations.NullMarked;
