package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.Command;
import org.bookholder.session.Decision.Choice;
import org.bookholder.session.Mover;
import org.bookholder.session.Remark;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.Readings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class ActionsTest {
    private final ExampleDesk session = new ExampleDesk(Path.of("nowhere"));
    private final FakeClock clock = new FakeClock();
    private final Actions actions = new Actions(session, clock);

    @Test
    void aMarkTakesTheLineThatWasJustRead() {
        session.happens(Readings.moved(7, 3, 1, 1));
        assertThat(actions.act("{\"do\":\"mark\"}")).isEmpty();
        session.happens(Readings.moved(8, 3, 2, 1));
        assertThat(actions.act("{\"do\":\"note\",\"text\":\" a\\n shadow \"}")).isEmpty();
        assertThat(session.told)
                .containsExactly(
                        new Command.Add(new Remark.Noted(2, "", true)),
                        new Command.Add(new Remark.Noted(3, "a shadow", false)));
    }

    @Test
    void aTakeIsRunAndABreakIsTaken() {
        for (String what : new String[] {"hold", "go_on", "cut", "break", "back"}) {
            assertThat(actions.act("{\"do\":\"" + what + "\"}")).isEmpty();
        }
        assertThat(actions.act("{\"do\":\"go_to\",\"line\":3}")).isEmpty();
        assertThat(actions.act("{\"do\":\"next_take\"}")).isEmpty();
        assertThat(session.told)
                .containsExactly(
                        new Command.Hold(),
                        new Command.Resume(),
                        new Command.Cut(),
                        new Command.Cut(),
                        new Command.Add(new Remark.BreakBegan(clock.instant())),
                        new Command.Add(new Remark.BreakOver(clock.instant())),
                        new Command.GoTo(new ReadingPosition(3, 1), Mover.HAND),
                        new Command.NextTake(new ReadingPosition(1, 1)));
    }

    @Test
    void aDecisionIsAboutAnAttempt() {
        assertThat(actions.act("{\"do\":\"decide\",\"line\":2,\"choice\":\"KEEP\",\"take\":1,\"ordinal\":2}"))
                .isEmpty();
        assertThat(session.told).containsExactly(new Command.Add(new Remark.Decided(2, Choice.KEEP, 1, 2)));
        assertThat(actions.act("{\"do\":\"decide\",\"line\":2,\"choice\":\"KEEP\",\"take\":1,\"ordinal\":9}"))
                .contains("there is no such attempt");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "[",
                "[]",
                "{\"do\":\"applaud\"}",
                "{\"do\":\"go_to\",\"line\":0}",
                "{\"do\":\"go_to\",\"line\":4}",
                "{\"do\":\"decide\",\"line\":1,\"choice\":\"BURN\"}",
                "{\"do\":\"bound\",\"take\":7,\"ordinal\":1,\"start\":1,\"end\":2}",
                "{\"do\":\"bound\",\"take\":1,\"ordinal\":1,\"start\":2,\"end\":1}",
                "{\"do\":\"bound\",\"take\":1,\"ordinal\":1,\"start\":\"NaN\",\"end\":1e999}"
            })
    void whatMakesNoSenseIsRefusedAndChangesNothing(String asked) {
        assertThat(actions.act(asked)).isPresent();
        assertThat(session.told).isEmpty();
    }

    @Test
    void aTextHasALimit() {
        String text = "x".repeat(Actions.LONGEST_TEXT + 1);
        assertThat(actions.act("{\"do\":\"say\",\"text\":\"" + text + "\"}")).isPresent();
    }
}
