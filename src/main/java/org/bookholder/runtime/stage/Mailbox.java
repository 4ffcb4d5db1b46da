package org.bookholder.runtime.stage;

import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/**
 * A queue from stages to one stage, which nobody ever waits in. Safe for use by several threads.
 *
 * <p>Being full is a state that producers ask for, not a wall that they run into: one that may hold back asks
 * {@link #full()} before it does its next step and idles if so (back-pressure); one that may not, a live capture, uses
 * {@link #offer} and reports what was refused. A producer that has asked may {@link #add} all that one step yields, so
 * that the content stays within the capacity and one step of each producer.
 *
 * @param <T> what is sent
 */
public final class Mailbox<T> {
    private final int capacity;
    private final ConcurrentLinkedQueue<T> queue = new ConcurrentLinkedQueue<>();
    private final AtomicInteger size = new AtomicInteger();

    /** Creates an empty mailbox that is full at {@code capacity} items, 1 or more. */
    public Mailbox(int capacity) {
        if (capacity < 1) {
            throw new IllegalArgumentException("capacity (" + capacity + ") must be 1 or more");
        }
        this.capacity = capacity;
    }

    /** Whether producers should hold back. */
    public boolean full() {
        return size.get() >= capacity;
    }

    /** Items waiting. */
    public int size() {
        return size.get();
    }

    /** Adds an item, also to a full mailbox: for what must not be lost and what one step yields. */
    public void add(T item) {
        size.incrementAndGet();
        queue.add(item);
    }

    /** Adds an item unless the mailbox is full; says whether it did. */
    public boolean offer(T item) {
        if (full()) {
            return false;
        }
        add(item);
        return true;
    }

    /** Takes the oldest item, or null if there is none. */
    public @Nullable T poll() {
        T item = queue.poll();
        if (item != null) {
            size.decrementAndGet();
        }
        return item;
    }
}
