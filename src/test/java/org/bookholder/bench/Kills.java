package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.bookholder.bench.KilledReading.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.vosk.VoskEars;

/**
 * Kills the demo's reading at random moments, opens the session again, and compares its notes with those of the same
 * reading cut in order at the sample where the recording ends.
 *
 * <p>Arguments: how often (default 60), the seed (default 1), and after how many milliseconds at the latest.
 */
public final class Kills {
    /** About the time that the demo's minute and a half takes at full speed on quiet cores. */
    static final int LATEST_MILLIS = 12_000;

    private Kills() {}

    /** Kills and prints. */
    public static void main(String[] args) throws IOException, InterruptedException, ProblemException {
        int kills = args.length > 0 ? Integer.parseInt(args[0]) : 60;
        Random random = new Random(args.length > 1 ? Long.parseLong(args[1]) : 1);
        int latest = args.length > 2 ? Integer.parseInt(args[2]) : LATEST_MILLIS;
        Path folder = Files.createTempDirectory("kills");
        int same = 0;
        int unknown = 0;
        double recorded = 0;
        try (VoskEars ears = VoskEars.load(KilledReading.MODEL)) {
            for (int i = 1; i <= kills; i++) {
                Outcome outcome =
                        new KilledReading(folder.resolve("session-" + i), ears).killAfter(random.nextInt(latest));
                same += outcome.differences().isEmpty() ? 1 : 0;
                unknown += outcome.unknownBefore();
                recorded += outcome.seconds();
                System.out.printf(
                        Locale.ROOT,
                        "%3d: %5.1f s recorded, %2d clean lines not known before, %s%n",
                        i,
                        outcome.seconds(),
                        outcome.unknownBefore(),
                        outcome.differences().isEmpty() ? "the same notes" : outcome.differences());
            }
        }
        System.out.printf(
                Locale.ROOT,
                "%d kills, %.0f s recorded: the notes of an orderly cut in %d, %d clean lines were not known before%n",
                kills,
                recorded,
                same,
                unknown);
    }
}
