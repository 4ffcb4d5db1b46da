package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
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

    @Test
    void aRepeatGetsTheOutcomeOfTheActThatIsUnderWay() {
        List<Request.Reply> underWay = new ArrayList<>();
        Told repeat = new Told();
        once.ask("a", told, underWay::add);
        once.ask("a", repeat, underWay::add);
        assertThat(underWay).hasSize(1);
        assertThat(repeat.all).isEmpty();

        underWay.get(0).failed("The disk is full.");
        assertThat(told.all).containsExactly("failed: The disk is full.");
        assertThat(repeat.all).containsExactly("failed: The disk is full.");

        once.ask("a", repeat, underWay::add);
        once.ask("a", repeat, underWay::add);
        underWay.get(1).done();
        once.ask("a", repeat, underWay::add);
        assertThat(underWay).hasSize(2);
        assertThat(repeat.all).containsExactly("failed: The disk is full.", "done", "done", "done");
    }

    @Test
    void anActThatCannotEvenBeAskedForMayBeSentAgain() {
        Consumer<Request.Reply> wrong = reply -> {
            throw new IllegalArgumentException("no such line");
        };
        assertThatIllegalArgumentException().isThrownBy(() -> once.ask("a", told, wrong));
        done("a");
        assertThat(times).hasValue(1);
        assertThat(told.all).containsExactly("done");
    }
}
