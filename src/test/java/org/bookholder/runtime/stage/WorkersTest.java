package org.bookholder.runtime.stage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.bookholder.runtime.stage.Workers.Patience;
import org.bookholder.testing.FakeClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
final class WorkersTest {
    private final FakeClock clock = new FakeClock();
    private final ConcurrentLinkedQueue<String> calls = new ConcurrentLinkedQueue<>();
    private final CountDownLatch closed = new CountDownLatch(1);

    @Test
    void runsAStageOnItsOwnNamedThread() throws InterruptedException {
        try (Workers workers = new Workers(clock, fault -> calls.add("failed"))) {
            workers.takeOn(new Recorded(2, null));
            awaitClosed();
        }
        String thread = "bookholder counter";
        assertThat(calls)
                .containsExactly("start on " + thread, "work on " + thread, "work on " + thread, "close on " + thread);
    }

    @Test
    void closesAStageThatFailsAndReportsItOnce() throws InterruptedException {
        ConcurrentLinkedQueue<Throwable> failures = new ConcurrentLinkedQueue<>();
        IllegalStateException failure = new IllegalStateException("no more");
        try (Workers workers = new Workers(clock, fault -> failures.add(fault.cause()))) {
            workers.takeOn(new Recorded(1, failure));
            awaitClosed();
        }
        assertThat(failures).containsExactly(failure);
        assertThat(calls).last().isEqualTo("close on bookholder counter");
    }

    @Test
    void stopsAStageThatWouldGoOnForEver() throws InterruptedException {
        Workers workers = new Workers(clock, fault -> calls.add("failed"));
        workers.takeOn(new Recorded(Integer.MAX_VALUE, null));
        workers.close();
        assertTrue(closed.await(10, TimeUnit.SECONDS));
        assertThat(calls).doesNotContain("failed");
    }

    @Test
    void interruptsAStageWhoseStepTakesTooLong() throws InterruptedException {
        ConcurrentLinkedQueue<StageFault> faults = new ConcurrentLinkedQueue<>();
        Workers workers = new Workers(clock, faults::add, new Patience(Duration.ZERO, Duration.ofSeconds(10)));
        CountDownLatch waiting = new CountDownLatch(1);
        workers.takeOn(new Waiting(waiting, new CountDownLatch(1), false));
        assertTrue(waiting.await(10, TimeUnit.SECONDS));
        workers.close();
        assertThat(faults)
                .singleElement()
                .satisfies(fault -> assertThat(fault.cause()).isInstanceOf(InterruptedException.class));
    }

    @Test
    void abandonsAStageThatDoesNotEndAndReportsWhereItHangs() throws InterruptedException {
        ConcurrentLinkedQueue<StageFault> faults = new ConcurrentLinkedQueue<>();
        Workers workers = new Workers(clock, faults::add, new Patience(Duration.ZERO, Duration.ZERO));
        CountDownLatch waiting = new CountDownLatch(1);
        CountDownLatch release = new CountDownLatch(1);
        workers.takeOn(new Waiting(waiting, release, true));
        assertTrue(waiting.await(10, TimeUnit.SECONDS));
        workers.close();
        release.countDown();
        assertThat(faults).singleElement().satisfies(fault -> {
            assertThat(fault.role()).isEqualTo("waiting");
            assertThat(fault.consequence()).isEqualTo(StageFault.Consequence.LEFT_BEHIND);
            assertThat(fault.cause()).hasStackTraceContaining("CountDownLatch.await");
        });
    }

    @Test
    void stopsAlsoAStageThatIsTakenOnWhileItCloses() throws InterruptedException {
        Workers workers = new Workers(clock, fault -> {}, new Patience(Duration.ZERO, Duration.ofSeconds(10)));
        CountDownLatch waiting = new CountDownLatch(1);
        workers.takeOn(new TakingOn(workers, waiting, new Recorded(Integer.MAX_VALUE, null)));
        assertTrue(waiting.await(10, TimeUnit.SECONDS));
        workers.close();
        awaitClosed();
        assertThat(calls).contains("start on bookholder counter");
    }

    @Test
    void closesAllAlsoIfTheThreadThatClosesIsInterrupted() throws InterruptedException {
        ConcurrentLinkedQueue<StageFault> faults = new ConcurrentLinkedQueue<>();
        Workers workers = new Workers(clock, faults::add, new Patience(Duration.ZERO, Duration.ofSeconds(10)));
        CountDownLatch waiting = new CountDownLatch(2);
        workers.takeOn(new Waiting(waiting, new CountDownLatch(1), false));
        workers.takeOn(new Waiting(waiting, new CountDownLatch(1), false));
        assertTrue(waiting.await(10, TimeUnit.SECONDS));
        Thread.currentThread().interrupt();
        workers.close();
        assertTrue(Thread.interrupted(), "the interrupt is handed on");
        assertThat(faults)
                .hasSize(2)
                .allSatisfy(fault -> assertThat(fault.cause()).isInstanceOf(InterruptedException.class));
    }

    /** A stage that is told to stop, and then hands over to another one. */
    private record TakingOn(Workers workers, CountDownLatch waiting, Stage other) implements Stage {
        @Override
        public String role() {
            return "taking on";
        }

        @Override
        public Criticality criticality() {
            return Criticality.OPTIONAL;
        }

        @Override
        public int doWork() {
            waiting.countDown();
            try {
                new CountDownLatch(1).await();
            } catch (InterruptedException stopped) {
                workers.takeOn(other);
            }
            return -1;
        }
    }

    /** A stage that waits within a step. */
    private record Waiting(CountDownLatch waiting, CountDownLatch release, boolean stubborn) implements Stage {
        @Override
        public String role() {
            return "waiting";
        }

        @Override
        public Criticality criticality() {
            return Criticality.OPTIONAL;
        }

        @Override
        public int doWork() throws InterruptedException {
            waiting.countDown();
            while (true) {
                try {
                    release.await();
                    return -1;
                } catch (InterruptedException e) {
                    if (!stubborn) {
                        throw e;
                    }
                }
            }
        }
    }

    private void awaitClosed() throws InterruptedException {
        assertTrue(closed.await(10, TimeUnit.SECONDS));
    }

    private final class Recorded implements Stage {
        private final @org.jspecify.annotations.Nullable RuntimeException failure;
        private int left;

        Recorded(int steps, @org.jspecify.annotations.Nullable RuntimeException failure) {
            this.left = steps;
            this.failure = failure;
        }

        @Override
        public String role() {
            return "counter";
        }

        @Override
        public Criticality criticality() {
            return Criticality.ESSENTIAL;
        }

        @Override
        public void onStart() {
            call("start");
        }

        @Override
        public int doWork() {
            if (left-- == 0) {
                if (failure != null) {
                    throw failure;
                }
                return -1;
            }
            if (calls.size() < 10) {
                call("work");
            }
            return 0;
        }

        @Override
        public void onClose() {
            call("close");
            closed.countDown();
        }

        private void call(String what) {
            calls.add(what + " on " + Thread.currentThread().getName());
        }
    }
}
