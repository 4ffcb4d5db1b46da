package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.runtime.stage.Shutdown;
import org.bookholder.session.Command;
import org.bookholder.session.PickupRound;
import org.bookholder.session.RoundCommand;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.session.UpNext;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** What is typed during a reading without a window. */
final class TerminalControlTest {
    private static final SessionState ROLLING = Session.apply(
            Session.begin(Scripts.of("One line.", "Another line."), FatigueLimits.defaults()),
            new SessionEvent.TakeStarted(StreamTime.ZERO, 1, Instant.EPOCH, "", new ReadingPosition(2, 1)));

    @Test
    void lettersSteerTheTake() {
        assertThat(typed("h\nN\n c \r\n", ROLLING))
                .containsExactly(
                        new TakeCommand.Hold(),
                        new TakeCommand.NextTake(new ReadingPosition(2, 1)),
                        new TakeCommand.Cut());
        SessionState held = Session.apply(ROLLING, new SessionEvent.Held(StreamTime.ZERO));
        assertThat(typed("h\n", held)).containsExactly(new TakeCommand.Resume());
        assertThat(typed("h\n", Session.apply(held, new SessionEvent.CountInStepped(StreamTime.ZERO, 0))))
                .containsExactly(new TakeCommand.BeginCount());
    }

    @Test
    void lettersSteerThePickupRound() {
        assertThatThrownBy(() -> typed("r\n", ROLLING)).hasMessage("there is nothing to pick up");
        assertThatThrownBy(() -> typed("l\n", ROLLING)).hasMessage("there is no pickup round; R begins it");
        SessionState marked = Session.apply(ROLLING, new SessionEvent.PickupMarked(StreamTime.ZERO, 1, ""));
        assertThat(typed("r\n", marked)).containsExactly(new RoundCommand.Begin());
        SessionState round =
                Session.apply(marked, new SessionEvent.RoundMoved(StreamTime.ZERO, PickupRound.NONE.at(1, 0)));
        assertThat(typed("l\na\nr\n", round))
                .containsExactly(new RoundCommand.Leave(), new RoundCommand.Again(), new RoundCommand.End());
    }

    @Test
    void lettersBeginABreakAndGoOnToTheNextLesson() {
        assertThat(typed("b\n", ROLLING)).containsExactly(new TakeCommand.BeginBreak());
        assertThatThrownBy(() -> typed("g\n", ROLLING)).hasMessageContaining("there is no other lesson");
        SessionState last = ROLLING.with(new UpNext("", Duration.ZERO, 0, ""));
        assertThatThrownBy(() -> typed("g\n", last)).hasMessageContaining("there is no other lesson");
        SessionState one = ROLLING.with(new UpNext("Two", Duration.ofMinutes(3), 0, "16:40"));
        assertThat(typed("g\n", one)).containsExactly(new TakeCommand.NextLesson());
    }

    @Test
    void anythingElseIsAnsweredWithWhatCanBeTyped() {
        assertThatThrownBy(() -> typed("help\n", ROLLING)).hasMessageContaining("Enter alone ends");
    }

    @Test
    void anEmptyLineEndsTheReadingOnce() {
        try (Shutdown shutdown = Shutdown.onInterrupt(() -> {})) {
            TerminalControl control = control(shutdown, "c\n\n");
            assertThat(control.requests()).hasSize(1);
            assertThat(control.finishRequested()).isTrue();
            assertThat(control.finishRequested()).isFalse();
            assertThat(control.requests()).isEmpty();
        }
    }

    private static List<Command> typed(String text, SessionState state) {
        try (Shutdown shutdown = Shutdown.onInterrupt(() -> {})) {
            TerminalControl control = control(shutdown, text);
            List<Command> commands = control.requests().stream()
                    .flatMap(request -> request.commands(state).stream())
                    .toList();
            assertThat(control.finishRequested()).isFalse();
            return commands;
        }
    }

    private static TerminalControl control(Shutdown shutdown, String text) {
        PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8);
        return new TerminalControl(
                shutdown,
                new Terminal(
                        nowhere,
                        nowhere,
                        new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)),
                        StandardCharsets.UTF_8));
    }
}
