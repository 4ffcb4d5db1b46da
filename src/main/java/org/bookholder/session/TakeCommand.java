package org.bookholder.session;

import org.bookholder.follow.model.ReadingPosition;

/** What a person asks of the take that is being recorded; only a running session can do it. */
public sealed interface TakeCommand extends Command {
    /** Does what is asked of a take. */
    interface Handler {
        /** Does {@link Hold}. */
        void hold();

        /** Does {@link Resume}. */
        void resume();

        /** Does {@link GoTo}. */
        void goTo(ReadingPosition position, Mover mover);

        /** Does {@link NextTake}. */
        void nextTake(ReadingPosition from);

        /** Does {@link Cut}. */
        void cut();

        /** Does {@link Quit}. */
        void quit();
    }

    /** Stop following and pace; the recording goes on. */
    record Hold() implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.hold();
        }
    }

    /** Go on after a hold. */
    record Resume() implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.resume();
        }
    }

    /** Put the reading position somewhere by hand. */
    record GoTo(ReadingPosition position, Mover mover) implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.goTo(position, mover);
        }
    }

    /** End this take and start the next one from the given position. */
    record NextTake(ReadingPosition from) implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.nextTake(from);
        }
    }

    /** End this take. */
    record Cut() implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.cut();
        }
    }

    /** End the session. */
    record Quit() implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.quit();
        }
    }
}
