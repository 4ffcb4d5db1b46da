/** Where events and sound are kept while a session runs, and how a kept session is taken up again. */
@NullMarked
package org.bookholder.runtime.record;

import org.jspecify.annotations.NullMarked;
