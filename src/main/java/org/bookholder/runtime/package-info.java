/** Stages and the threads that drive them; the only package that makes threads. */
@NullMarked
package org.bookholder.runtime;

import org.jspecify.annotations.NullMarked;
