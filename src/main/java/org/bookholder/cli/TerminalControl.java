package org.bookholder.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.app.reading.ReadingControl;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.runtime.stage.Shutdown;
import org.bookholder.script.model.PaceSource;
import org.bookholder.session.Command;
import org.bookholder.session.OwnPace;
import org.bookholder.session.Request;
import org.bookholder.session.RoundCommand;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.session.UpNext;
import org.bookholder.wording.PaceText;

/** Steers a reading from a terminal: Ctrl-C and an empty line end it, a letter does something else. */
final class TerminalControl implements ReadingControl {
    private static final int LONGEST = 80;

    private final Shutdown shutdown;
    private final Terminal terminal;
    private final List<Request> asked = new ArrayList<>();
    private String begun = "";
    private boolean finish;

    TerminalControl(Shutdown shutdown, Terminal terminal) {
        this.shutdown = shutdown;
        this.terminal = terminal;
    }

    @Override
    public boolean interrupted() {
        return shutdown.asked();
    }

    @Override
    public boolean finishRequested() {
        look();
        boolean now = finish;
        finish = false;
        return now;
    }

    @Override
    public List<Request> requests() {
        look();
        List<Request> all = List.copyOf(asked);
        asked.clear();
        return all;
    }

    private void look() {
        String typed = begun + terminal.typed();
        int end = typed.lastIndexOf('\n');
        if (end >= 0) {
            for (String line : typed.substring(0, end).split("\n", -1)) {
                take(line.strip().toUpperCase(Locale.ROOT));
            }
        }
        String rest = typed.substring(end + 1);
        begun = rest.substring(Math.max(0, rest.length() - LONGEST));
    }

    private void take(String line) {
        if (line.isEmpty()) {
            finish = true;
        } else {
            asked.add(state -> commands(line, state));
        }
    }

    /** The commands that a letter stands for. */
    private static List<Command> commands(String letter, SessionState state) {
        boolean round = state.round().isOn();
        return switch (letter) {
            case "H" -> List.of(hold(state));
            case "C" -> List.of(new TakeCommand.Cut());
            case "N" -> List.of(new TakeCommand.NextTake(lineStart(state)));
            case "R" -> List.of(round ? new RoundCommand.End() : begin(state));
            case "L" -> List.of(inRound(round, new RoundCommand.Leave()));
            case "A" -> List.of(inRound(round, new RoundCommand.Again()));
            case "B" -> List.of(rest(state));
            case "G" -> List.of(nextLesson(state));
            case "O" -> List.of(ownPace(state));
            default ->
                throw new IllegalArgumentException(
                        "H holds or goes on, C cuts, N begins the next take, R the pickup round, L leaves its line, A"
                                + " repeats it, B begins or ends a break, G goes on to the next lesson, O makes your pace"
                                + " the target, Enter alone ends");
        };
    }

    private static Command hold(SessionState state) {
        if (state.takes().countIn().isPresent()) {
            return new TakeCommand.BeginCount();
        }
        return state.takes().held() ? new TakeCommand.Resume() : new TakeCommand.Hold();
    }

    private static Command begin(SessionState state) {
        if (state.lines().pickups().isEmpty()) {
            throw new IllegalArgumentException("there is nothing to pick up");
        }
        return new RoundCommand.Begin();
    }

    private static Command rest(SessionState state) {
        return state.remarks().breakSince().isPresent() ? new TakeCommand.EndBreak() : new TakeCommand.BeginBreak();
    }

    private static Command nextLesson(SessionState state) {
        if (state.upNext().filter(UpNext::isLeft).isEmpty()) {
            throw new IllegalArgumentException("there is no other lesson; Enter alone ends the session");
        }
        return new TakeCommand.NextLesson();
    }

    private static Command ownPace(SessionState state) {
        int pace = OwnPace.offered(state)
                .orElseThrow(() -> new IllegalArgumentException("the target stays " + PaceText.target(state)));
        return new TakeCommand.AimPace(pace, PaceSource.OWN);
    }

    private static Command inRound(boolean round, Command command) {
        if (!round) {
            throw new IllegalArgumentException("there is no pickup round; R begins it");
        }
        return command;
    }

    private static ReadingPosition lineStart(SessionState state) {
        int line = state.following().position().line();
        return line > state.lines().count() ? ReadingPosition.START : new ReadingPosition(line, 1);
    }
}
