package org.bookholder.app.environment;

import java.util.function.BooleanSupplier;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.footage.SoundTrack;

/**
 * Lets long work be stopped between two of its steps. The work then cleans up as after any other failure, so that nothing
 * half-written stays behind. Confined to the thread that does the work.
 */
public final class Interruption {
    /** Never stops the work. */
    public static final Interruption NONE = new Interruption(() -> false);

    private final BooleanSupplier requested;

    /** Stops the work as soon as {@code requested} says so. */
    public Interruption(BooleanSupplier requested) {
        this.requested = requested;
    }

    /** Whether the work is to stop. */
    public boolean requested() {
        return requested.getAsBoolean();
    }

    /**
     * Leaves the work if it is to stop.
     *
     * @throws OperationInterrupted if it is
     */
    public void check() {
        if (requested()) {
            throw new OperationInterrupted();
        }
    }

    /** The same recordings; each read is a step. */
    public TakeSound over(TakeSound sound) {
        return (take, from, to) -> {
            check();
            return sound.read(take, from, to);
        };
    }

    /** The same sound; each read is a step. */
    public SoundTrack over(SoundTrack sound) {
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
}
