/**
 * The stages of a reading and the threads that drive them; start at {@link org.bookholder.runtime.Reading}. The
 * sub-packages in reading order: {@code stage} (stages, threads, queues), {@code source} (where sound and text come
 * from), {@code record} (events and sound to disk), {@code take} (one running take), {@code recovery} (interrupted
 * takes, followed again from their recordings).
 */
@NullMarked
package org.bookholder.runtime;

import org.jspecify.annotations.NullMarked;
