package org.bookholder.runtime.stage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.bookholder.files.SideBySide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class HelpersTest {
    @ParameterizedTest
    @ValueSource(ints = {-1, 0, 1, 7})
    void whatComesOfEachIsInTheOrderOfTheItems(int helpers) {
        List<Integer> items = IntStream.range(0, 500).boxed().toList();
        List<Integer> doubled = items.stream().map(i -> i * 2).toList();
        assertThat(new Helpers(helpers).each(items, i -> i * 2))
                .isEqualTo(doubled)
                .isEqualTo(SideBySide.ONE_BY_ONE.each(items, i -> i * 2));
        assertThat(new Helpers(helpers).each(List.of(), i -> i)).isEmpty();
    }

    /** Each of the three waits until all have begun: they must be on three threads, one of them the caller's. */
    @Test
    @Timeout(60)
    void severalAreUnderWayAtATime() {
        CountDownLatch begun = new CountDownLatch(3);
        Set<Thread> threads = ConcurrentHashMap.newKeySet();
        new Helpers(2).each(List.of(1, 2, 3), item -> {
            threads.add(Thread.currentThread());
            begun.countDown();
            return await(begun);
        });
        assertThat(threads).hasSize(3).contains(Thread.currentThread());
    }

    /** A helper may ask for helpers itself. */
    @Test
    @Timeout(60)
    void helpersHaveHelpers() {
        Helpers helpers = new Helpers(1);
        assertThat(helpers.each(List.of(1, 2, 3, 4), i -> helpers.each(List.of(i, i), j -> j * 10)))
                .containsExactly(List.of(10, 10), List.of(20, 20), List.of(30, 30), List.of(40, 40));
    }

    @Test
    void theFirstFaultIsThrownAsItWas() {
        IllegalStateException fault = new IllegalStateException("first");
        assertThatThrownBy(() -> new Helpers(1).each(List.of(1, 2, 3), i -> {
                    if (i == 2) {
                        throw fault;
                    }
                    if (i == 3) {
                        throw new IllegalArgumentException("second");
                    }
                    return i;
                }))
                .isSameAs(fault);
    }

    private static boolean await(CountDownLatch latch) {
        try {
            return latch.await(30, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
