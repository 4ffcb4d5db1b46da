package org.bookholder.session;

/** A request to note or decide something, in a running session or in its review. */
public sealed interface NoteCommand extends Command {
    /** Calls the handler's method for this command. */
    void note(Handler handler);

    @Override
    default void to(Command.Handler handler) {
        note(handler);
    }

    /** Carries out the commands. */
    interface Handler {
        /** Carries out {@link Add}. */
        void add(Remark remark);
    }

    /** Add a remark to the session. */
    record Add(Remark remark) implements NoteCommand {
        @Override
        public void note(NoteCommand.Handler handler) {
            handler.add(remark);
        }
    }
}
