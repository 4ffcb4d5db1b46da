package org.bookholder.follow.graph;

import java.util.Arrays;

/** A growing list of ints, without boxing. */
final class IntList {
    private int[] values = new int[8];
    private int size;

    void add(int value) {
        if (size == values.length) {
            values = Arrays.copyOf(values, 2 * size);
        }
        values[size++] = value;
    }

    int get(int index) {
        if (index >= size) {
            throw new IndexOutOfBoundsException("index (" + index + ") must be below " + size);
        }
        return values[index];
    }

    int size() {
        return size;
    }

    /** In a list in ascending order, the index of the first value that is not below {@code value}. */
    int lowerBound(int value) {
        int found = Arrays.binarySearch(values, 0, size, value);
        return found >= 0 ? found : -found - 1;
    }
}
