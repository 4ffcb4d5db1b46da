package org.bookholder.runtime.stage;

import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/**
 * A queue from stages to one stage. No operation blocks. Safe for use by several threads.
 *
 * <p>Producers check whether the mailbox is full; they are not blocked by it. A producer that can wait calls {@link
 * #full()} before its next step and idles if it is (back-pressure). One that cannot, such as live capture, uses {@link
 * #offer} and reports what was refused. After checking, a producer may {@link #add} everything that one step yields, so
 * the content never exceeds the capacity by more than one step of each producer.
 *
 * @param <T> what is sent
 */
public final class Mailbox<T> {
    private final int capacity;
    private final ConcurrentLinkedQueue<T> queue = new ConcurrentLinkedQueue<>();
    private final AtomicInteger size = new AtomicInteger();

    /** Creates an empty mailbox that counts as full at {@code capacity} items, 1 or more. */
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

    /** Number of waiting items. */
    public int size() {
        return size.get();
    }

    /** Adds an item even if the mailbox is full: for items that must not be lost, and for the results of one step. */
    public void add(T item) {
        size.incrementAndGet();
        queue.add(item);
    }

    /** Adds an item unless the mailbox is full; returns whether it did. */
    public boolean offer(T item) {
        if (full()) {
            return false;
        }
        add(item);
        return true;
    }

    /** Removes and returns the oldest item; null if there is none. */
    public @Nullable T poll() {
        T item = queue.poll();
        if (item != null) {
            size.decrementAndGet();
        }
        return item;
    }
}
