package org.bookholder.cli;

import java.util.function.BooleanSupplier;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.footage.SoundTrack;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Shutdown;

/**
 * Lets a command be interrupted (Ctrl-C): what runs is left between two of its steps and cleans up as after any mishap, so that
 * nothing half-written stays behind. Confined to the command's thread.
 */
final class Interruption {
    /** What shells report of a program that was interrupted: 128 and the signal's number. */
    private static final int STATUS = 130;

    /** For work that is part of something longer and is done to its end. */
    static final Interruption NONE = new Interruption(() -> false);

    private final BooleanSupplier asked;

    private Interruption(BooleanSupplier asked) {
        this.asked = asked;
    }

    /** What can be interrupted. */
    @FunctionalInterface
    interface Work {
        /** Does it, and asks {@code interruption} between its steps; returns the exit status. */
        int run(Interruption interruption) throws ProblemException;
    }

    /**
     * Does work until it is done or interrupted.
     *
     * @param left what is said when it was interrupted: what became of what it was to do
     */
    static int watch(Terminal terminal, String left, Work work) throws ProblemException {
        try (Shutdown shutdown = Shutdown.onInterrupt(() -> {})) {
            try {
                return work.run(new Interruption(shutdown::asked));
            } catch (Interrupted e) {
                // Before the shutdown is let go on, or the line would be lost.
                terminal.err().println("bookholder: interrupted; " + left);
                terminal.err().flush();
                return STATUS;
            }
        }
    }

    /** Leaves the work if it was interrupted. */
    void check() {
        if (asked.getAsBoolean()) {
            throw new Interrupted();
        }
    }

    /** The same recordings; reading a piece of them is a step. */
    TakeSound over(TakeSound sound) {
        return (take, from, to) -> {
            check();
            return sound.read(take, from, to);
        };
    }

    /** The same sound; reading a piece of it is a step. */
    SoundTrack over(SoundTrack sound) {
        return new SoundTrack() {
            @Override
            public long length() {
                return sound.length();
            }

            @Override
            public float[] read(long from, int count) {
                check();
                return sound.read(from, count);
            }
        };
    }

    /** The work is left. Passes through whatever is open, which closes; nobody but {@link #watch} may catch it. */
    private static final class Interrupted extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Interrupted() {
            super("the command was interrupted");
        }
    }
}
