package org.bookholder.footage;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.bookholder.footage.Cameras.Room;
import org.bookholder.timing.StreamTime;

/**
 * A simulated camera with a known place and clock, and the result of matching it.
 *
 * @param decibels of the voice above the noise
 * @param found where the take was found in it, if it was
 * @param error by how much that is out, at the worse end of what both have in common, in seconds; 0 if it was not found
 */
public record CameraTrial(int decibels, Optional<Placement> found, double error) {
    private static final int[] NOISE = {20, 10, 5};

    /** Films a take with the camera of that number: the same number always gives the same camera. */
    public static CameraTrial of(float[] take, Room room, int number, long seed) {
        Random random = new Random(1_000_003 * seed + number);
        double drift = (2 * random.nextDouble() - 1) * 100e-6;
        double from = (60 * random.nextDouble() - 30) * SoundTrack.RATE;
        int length = (int) ((40 + 60 * random.nextDouble()) * SoundTrack.RATE);
        int decibels = NOISE[number % NOISE.length];
        float[] film = Cameras.counted(Cameras.elsewhere(take, room, random), from, drift, length);
        Cameras.addNoise(film, decibels, random);
        Optional<Placement> found =
                new FootageMatcher().match(Cameras.track(film), Cameras.track(take), 1, StreamTime.ZERO);
        return new CameraTrial(
                decibels, found, found.map(f -> error(f, from, drift)).orElse(0.0));
    }

    /** At both ends of what they have in common, so that a wrong drift cannot hide. */
    private static double error(Placement found, double from, double drift) {
        double worst = 0;
        for (StreamTime at : List.of(found.from(), found.to())) {
            double wanted = (at.seconds() * SoundTrack.RATE - from) * (1 + drift) / SoundTrack.RATE;
            worst = Math.max(worst, Math.abs(found.inFile(at) / 48_000.0 - wanted));
        }
        return worst;
    }
}
