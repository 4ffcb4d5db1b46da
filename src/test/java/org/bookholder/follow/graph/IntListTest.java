package org.bookholder.follow.graph;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.junit.jupiter.api.Test;

final class IntListTest {
    private final IntList list = new IntList();

    @Test
    void growsAndKeepsItsValues() {
        fill(20);
        assertThat(list.size()).isEqualTo(20);
        assertThat(list.get(0)).isZero();
        assertThat(list.get(19)).isEqualTo(190);
    }

    @Test
    void anIndexBeyondItsEndIsRefused() {
        fill(5);
        assertThatExceptionOfType(IndexOutOfBoundsException.class)
                .isThrownBy(() -> list.get(5))
                .withMessageContaining("index (5) must be below 5");
    }

    @Test
    void findsTheFirstValueThatIsNotBelowAnother() {
        fill(10);
        assertThat(list.lowerBound(-1)).isZero();
        assertThat(list.lowerBound(40)).isEqualTo(4);
        assertThat(list.lowerBound(41)).isEqualTo(5);
        assertThat(list.lowerBound(1000)).isEqualTo(10);
    }

    private void fill(int count) {
        for (int i = 0; i < count; i++) {
            list.add(10 * i);
        }
    }
}
