/** Stages, the threads that drive them, and what passes between them. */
@NullMarked
package org.bookholder.runtime.stage;

import org.jspecify.annotations.NullMarked;
