package org.bookholder.session;

/** A command about the pickup round; only a running session can carry it out. */
public sealed interface RoundCommand extends Command {
    /** Carries out the commands. */
    interface Handler {
        /** Carries out {@link Begin}. */
        void beginRound();

        /** Carries out {@link End}. */
        void endRound();

        /** Carries out {@link Leave}. */
        void leaveLine();

        /** Carries out {@link Again}. */
        void lineAgain();
    }

    /** Begin with the first line to pick up; does nothing if there is none, or if the round has begun. */
    record Begin() implements RoundCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.beginRound();
        }
    }

    /** End the round; a rolling take goes on. */
    record End() implements RoundCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.endRound();
        }
    }

    /** Leave the line as it is and go to the next one; ends the round if there is no other. */
    record Leave() implements RoundCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.leaveLine();
        }
    }

    /** Bring up the same line again. */
    record Again() implements RoundCommand {
        @Override
        public void to(Command.Handler handler) {
            handler.lineAgain();
        }
    }
}
