package org.bookholder.session;

import org.bookholder.follow.model.ReadingPosition;

/** What a person asks of a running session, from the reading window, the terminal or the desk. */
public sealed interface Command {
    /** Tells {@code handler} what is asked. */
    void to(Handler handler);

    /** Who does what is asked. */
    interface Handler {
        /** Does {@link Hold}. */
        void hold();

        /** Does {@link Resume}. */
        void resume();

        /** Does {@link GoTo}. */
        void goTo(ReadingPosition position, Mover mover);

        /** Does {@link MarkPickup}. */
        void markPickup(int line, String note);

        /** Does {@link NextTake}. */
        void nextTake(ReadingPosition from);

        /** Does {@link Cut}. */
        void cut();

        /** Does {@link Add}. */
        void add(Remark remark);

        /** Does {@link Quit}. */
        void quit();
    }

    /** Stop following and pace; the recording goes on. */
    record Hold() implements Command {
        @Override
        public void to(Handler handler) {
            handler.hold();
        }
    }

    /** Go on after a hold. */
    record Resume() implements Command {
        @Override
        public void to(Handler handler) {
            handler.resume();
        }
    }

    /** Put the reading position somewhere by hand. */
    record GoTo(ReadingPosition position, Mover mover) implements Command {
        @Override
        public void to(Handler handler) {
            handler.goTo(position, mover);
        }
    }

    /** Note the line as a pickup. */
    record MarkPickup(int line, String note) implements Command {
        @Override
        public void to(Handler handler) {
            handler.markPickup(line, note);
        }
    }

    /** End this take and start the next one from the given position. */
    record NextTake(ReadingPosition from) implements Command {
        @Override
        public void to(Handler handler) {
            handler.nextTake(from);
        }
    }

    /** End this take. */
    record Cut() implements Command {
        @Override
        public void to(Handler handler) {
            handler.cut();
        }
    }

    /** Add something to the session. */
    record Add(Remark remark) implements Command {
        @Override
        public void to(Handler handler) {
            handler.add(remark);
        }
    }

    /** End the session. */
    record Quit() implements Command {
        @Override
        public void to(Handler handler) {
            handler.quit();
        }
    }
}
