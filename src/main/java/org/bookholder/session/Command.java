package org.bookholder.session;

/** Something a person asks of a session, from the reading window, the terminal or the desk. */
public sealed interface Command permits TakeCommand, RoundCommand, NoteCommand {
    /** Calls the handler's method for this command. */
    void to(Handler handler);

    /** Carries out all commands of a running session. */
    interface Handler extends TakeCommand.Handler, RoundCommand.Handler, NoteCommand.Handler {}
}
