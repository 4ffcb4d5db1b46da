/** Stages, the threads that run them, and the queues between them. */
@NullMarked
package org.bookholder.runtime.stage;

import org.jspecify.annotations.NullMarked;
