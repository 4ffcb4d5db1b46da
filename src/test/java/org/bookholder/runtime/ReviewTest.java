package org.bookholder.runtime;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.Overflow;
import org.bookholder.runtime.stage.ManualScheduler;
import org.bookholder.session.Command;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.Request;
import org.bookholder.session.Session;
import org.bookholder.session.TakeCommand;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.FakeJournal;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

final class ReviewTest {
    private static final Command NOTE = new NoteCommand.Add(new Remark.Noted(1, "too quick", false));

    private final FakeJournal journal = new FakeJournal();
    private final Review review = new Review(
            journal,
            Overflow.NONE,
            Session.begin(Scripts.of("A first line."), FatigueLimits.defaults()),
            () -> 0,
            new FaultLog(entry -> {}, new FakeClock()));
    private final List<String> replies = new ArrayList<>();
    private final List<Throwable> failures = new ArrayList<>();
    private final ManualScheduler scheduler = new ManualScheduler(() -> 0, fault -> failures.add(fault.cause()));

    @BeforeEach
    void begin() {
        review.begin(scheduler);
    }

    @AfterEach
    void end() {
        scheduler.stop();
        assertThat(failures).isEmpty();
    }

    @Test
    void carriesOutRequestsAndAnswers() {
        ask(NOTE, new NoteCommand.Add(new Remark.Noted(1, "a door", true)));
        assertThat(replies).containsExactly("done");
        assertThat(review.state().get().remarks().notes()).extracting("text").containsExactly("too quick", "a door");
        assertThat(journal.events()).hasSize(2);
    }

    @Test
    void refusesARequestAboutATakeAsAWhole() {
        ask(NOTE, new TakeCommand.Hold());
        assertThat(replies).containsExactly("refused: this session is only reviewed, no take can be recorded");
        assertThat(review.state().get().remarks().notes()).isEmpty();
        assertThat(journal.events()).isEmpty();
    }

    @Test
    void refusesRequestsThatTheStateDoesNotAllow() {
        review.ask(
                state -> {
                    throw new IllegalArgumentException("there is no line 9");
                },
                reply());
        scheduler.runUntilIdle(100);
        assertThat(replies).containsExactly("refused: there is no line 9");
    }

    private void ask(Command... commands) {
        review.ask(state -> List.of(commands), reply());
        scheduler.runUntilIdle(100);
    }

    private Request.Reply reply() {
        return new Request.Reply() {
            @Override
            public void done() {
                replies.add("done");
            }

            @Override
            public void refused(String why) {
                replies.add("refused: " + why);
            }

            @Override
            public void failed(String what) {
                replies.add("failed: " + what);
            }
        };
    }
}
