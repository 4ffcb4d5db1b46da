package org.bookholder.runtime.stage;

import java.util.function.Supplier;

/**
 * The newest value of something that one thread changes and others read. A reader may miss values, but never sees an
 * older one after a newer one, and never waits.
 *
 * @param <T> an immutable value
 */
public final class Latest<T> implements Supplier<T> {
    private volatile T value;

    /** Starts with {@code first}. */
    public Latest(T first) {
        value = first;
    }

    @Override
    public T get() {
        return value;
    }

    /** Replaces the value. */
    public void set(T next) {
        value = next;
    }
}
