package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicInteger;
import org.bookholder.session.Request;
import org.junit.jupiter.api.Test;

final class OnceOnlyTest {
    private final OnceOnly once = new OnceOnly();
    private final Told told = new Told();
    private final AtomicInteger times = new AtomicInteger();

    private void done(String name) {
        once.ask(name, told, reply -> {
            times.incrementAndGet();
            reply.done();
        });
    }

    @Test
    void anActThatIsSentAgainIsDoneOnce() {
        done("a");
        done("a");
        done("b");
        assertThat(times).hasValue(2);
        assertThat(told.all).containsExactly("done", "done", "done");
    }

    @Test
    void anActWithoutANameIsDoneEachTime() {
        done("");
        done("");
        assertThat(times).hasValue(2);
    }

    @Test
    void anActThatWasNotDoneMayBeSentAgain() {
        once.ask("a", told, (Request.Reply reply) -> reply.refused("no take is rolling"));
        once.ask("a", told, (Request.Reply reply) -> reply.failed("The disk is full."));
        done("a");
        assertThat(told.all).containsExactly("refused: no take is rolling", "failed: The disk is full.", "done");
    }
}
