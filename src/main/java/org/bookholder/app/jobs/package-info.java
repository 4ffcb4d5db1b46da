/** Long work that goes on in the background, one after another; start at {@link org.bookholder.app.jobs.Jobs}. */
@NullMarked
package org.bookholder.app.jobs;

import org.jspecify.annotations.NullMarked;
