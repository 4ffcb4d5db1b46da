package org.bookholder.runtime.stage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.atomic.AtomicReference;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class CallThreadTest {
    private final CallThread thread = new CallThread("test", () -> new IllegalStateException("given up"));

    @Test
    void makesAllCallsOnOneThreadThatIsNotTheCallers() {
        Thread first = thread.call(Thread::currentThread);
        assertThat(first.getName()).isEqualTo("bookholder test");
        assertThat(first.isDaemon()).isTrue();
        assertThat(thread.call(Thread::currentThread)).isSameAs(first).isNotSameAs(Thread.currentThread());
    }

    @Test
    void passesOnWhatACallFailsWithAndMakesTheNext() {
        ProblemException problem = new ProblemException("what", "where", "what to do");
        assertThatThrownBy(() -> thread.call(() -> {
                    throw problem;
                }))
                .isSameAs(problem);
        LinkageError error = new LinkageError("no library");
        assertThatThrownBy(() -> thread.call(() -> {
                    throw error;
                }))
                .isSameAs(error);
        assertThat(thread.call(() -> 1)).isEqualTo(1);
    }

    @Test
    void aCallInWhichItIsGivenUpNeverReturnsAndItsCallerGoesOn() {
        AtomicReference<String> after = new AtomicReference<>("nothing");
        assertThatThrownBy(() -> thread.call(() -> {
                    thread.giveUp();
                    return after.getAndSet("it ran on");
                }))
                .hasMessage("given up");
        assertThatThrownBy(() -> thread.call(() -> after.getAndSet("another call")))
                .hasMessage("given up");
        assertThat(after).hasValue("nothing");
    }
}
