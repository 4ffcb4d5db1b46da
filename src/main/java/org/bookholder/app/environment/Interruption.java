package org.bookholder.app.environment;

import java.util.function.BooleanSupplier;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.footage.SoundTrack;

/**
 * Stops long work between two of its steps. The work then cleans up as after any other failure, so that nothing
 * incomplete stays behind. Confined to the thread that does the work.
 */
public final class Interruption {
    /** Never stops the work. */
    public static final Interruption NONE = new Interruption(() -> false);

    private final BooleanSupplier requested;

    /** Stops the work once {@code requested} returns true. */
    public Interruption(BooleanSupplier requested) {
        this.requested = requested;
    }

    /** Whether the work should stop. */
    public boolean requested() {
        return requested.getAsBoolean();
    }

    /**
     * Throws if the work should stop.
     *
     * @throws OperationInterrupted if it should
     */
    public void check() {
        if (requested()) {
            throw new OperationInterrupted();
        }
    }

    /** Wraps recordings so that each read is a step. */
    public TakeSound over(TakeSound sound) {
        return (take, from, to) -> {
            check();
            return sound.read(take, from, to);
        };
    }

    /** Wraps a sound track so that each read is a step. */
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
