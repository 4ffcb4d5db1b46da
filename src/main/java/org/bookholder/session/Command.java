package org.bookholder.session;

import org.bookholder.follow.ReadingPosition;

/** What a person asks of a running session, from the reading window, the terminal or the desk. */
public sealed interface Command {
    /** Stop following and pace; the recording goes on. */
    record Hold() implements Command {}

    /** Go on after a hold. */
    record Resume() implements Command {}

    /** Put the reading position somewhere by hand. */
    record GoTo(ReadingPosition position, Mover mover) implements Command {}

    /** Note the line as a pickup. */
    record MarkPickup(int line, String note) implements Command {}

    /** End this take and start the next one from the given position. */
    record NextTake(ReadingPosition from) implements Command {}

    /** End this take. */
    record Cut() implements Command {}

    /** End the session. */
    record Quit() implements Command {}
}
