/**
 * What the commands do, as jobs that the page asks for: each one calls the same service as its command. Start at {@link
 * org.bookholder.app.work.WorkList}.
 */
@NullMarked
package org.bookholder.app.work;

import org.jspecify.annotations.NullMarked;
