package org.bookholder.sound;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/**
 * Finds holes in sound: digital silence that is shorter than a pause, with a loud wave right before and right after it.
 * A voice fades out and in; only lost sound stops and starts this abruptly. Confined to one thread.
 */
final class HoleFinder {
    /** Rounding and dither may turn silence into samples as large as this. */
    private static final int SILENT = 1;

    /** The amplitude that the wave must reach next to a hole: -40 dBFS. */
    private static final int LOUD = 328;

    /** How close to the hole it must reach it, in seconds: half a period of the lowest voices. */
    private static final double NEAR = 0.005;

    private static final double SHORTEST = 0.01;

    /** The usual cut-off for pauses in the literature (De Jong and Bosker 2013 give 0.25 to 0.3 s). */
    private static final double LONGEST = 0.25;

    private int silent;
    private int sinceLoud = Integer.MAX_VALUE;
    private boolean steep;
    private int hole;
    private int sinceHole;

    /** Takes in a block that directly follows the previous one; returns the holes newly found. */
    List<Spoil> hear(AudioBlock block) {
        List<Spoil> found = new ArrayList<>();
        int near = (int) (NEAR * block.rate());
        short[] samples = block.samples();
        for (int i = 0; i < samples.length; i++) {
            int height = Math.abs(samples[i]);
            if (height <= SILENT) {
                steep = silent == 0 ? sinceLoud < near : steep;
                silent++;
            } else {
                ends(block.rate());
                silent = 0;
            }
            sinceLoud = height >= LOUD ? 0 : sinceLoud == Integer.MAX_VALUE ? sinceLoud : sinceLoud + 1;
            if (hole > 0) {
                sinceHole++;
                if (height >= LOUD) {
                    found.add(spoil(block, i + 1 - sinceHole));
                    hole = 0;
                } else if (sinceHole > near) {
                    hole = 0;
                }
            }
        }
        return found;
    }

    /** Called when digital silence ends at this sample; notes a possible hole, which counts if a loud wave follows. */
    private void ends(int rate) {
        if (steep && silent >= SHORTEST * rate && silent <= LONGEST * rate) {
            hole = silent;
            sinceHole = 0;
        }
    }

    private Spoil spoil(AudioBlock block, int end) {
        long at = block.start().samples(block.rate()) + end;
        return new Spoil(
                StreamTime.ofSamples(at - hole, block.rate()),
                StreamTime.ofSamples(at, block.rate()),
                Spoil.Kind.DROPOUT);
    }
}
