package org.bookholder.session;

/** What a person asks of a session, from the reading window, the terminal or the desk. */
public sealed interface Command permits TakeCommand, NoteCommand {
    /** Has {@code handler} do what is asked. */
    void to(Handler handler);

    /** Does everything that can be asked of a running session. */
    interface Handler extends TakeCommand.Handler, NoteCommand.Handler {}
}
