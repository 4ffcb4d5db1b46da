package org.bookholder.session;

import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.PaceSource;

/** A command about the take being recorded; only a running session can carry it out. */
public sealed interface TakeCommand extends Command {
    /** Carries out the commands. */
    interface Handler {
        /** Carries out {@link Hold}. */
        void hold();

        /** Carries out {@link Resume}. */
        void resume();

        /** Carries out {@link BeginCount}. */
        void beginCount();

        /** Carries out {@link GoTo}. */
        void goTo(ReadingPosition position, Mover mover);

        /** Carries out {@link NextTake}. */
        void nextTake(ReadingPosition from);

        /** Carries out {@link Cut}. */
        void cut();

        /** Carries out {@link AimPace}. */
        void aimPace(int pace, PaceSource source);

        /** Carries out {@link BeginBreak}. */
        void beginBreak();

        /** Carries out {@link EndBreak}. */
        void endBreak();

        /** Carries out {@link NextLesson}. */
        void nextLesson();

        /** Carries out {@link Quit}. */
        void quit();
    }

    /** Pause following and pace; the recording continues. */
    record Hold() implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.hold();
        }
    }

    /** Continue after a hold. */
    record Resume() implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.resume();
        }
    }

    /** Begin the count-in that waits; if it is being counted, begin to read at once. */
    record BeginCount() implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.beginCount();
        }
    }

    /** Move the reading position. */
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

    /** Read at this pace, in words per minute, if the script itself sets none. */
    record AimPace(int pace, PaceSource source) implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.aimPace(pace, source);
        }
    }

    /** End this take, and begin a break. */
    record BeginBreak() implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.beginBreak();
        }
    }

    /** End the break, if there is one. */
    record EndBreak() implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.endBreak();
        }
    }

    /** End the session, and go on to the next lesson of the running order. */
    record NextLesson() implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.nextLesson();
        }
    }

    /** End the session, and with it the running order. */
    record Quit() implements TakeCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.quit();
        }
    }
}
