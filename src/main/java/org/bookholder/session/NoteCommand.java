package org.bookholder.session;

/** What a person asks to be noted or decided, in a running session or in its review. */
public sealed interface NoteCommand extends Command {
    /** Has {@code handler} note it. */
    void note(Handler handler);

    @Override
    default void to(Command.Handler handler) {
        note(handler);
    }

    /** Notes what is asked. */
    interface Handler {
        /** Does {@link MarkPickup}. */
        void markPickup(int line, String note);

        /** Does {@link Add}. */
        void add(Remark remark);
    }

    /** Note the line as a pickup. */
    record MarkPickup(int line, String note) implements NoteCommand {
        @Override
        public void note(NoteCommand.Handler handler) {
            handler.markPickup(line, note);
        }
    }

    /** Add something to the session. */
    record Add(Remark remark) implements NoteCommand {
        @Override
        public void note(NoteCommand.Handler handler) {
            handler.add(remark);
        }
    }
}
