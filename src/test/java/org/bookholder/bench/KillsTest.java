package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Random;
import org.bookholder.bench.KilledReading.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** A few kills of the demo's reading; {@link Kills} does many. */
@Timeout(600)
@Execution(ExecutionMode.CONCURRENT)
final class KillsTest {
    private static final int KILLS = 3;

    @TempDir
    private Path folder;

    @Test
    void notesAfterAKillAreThoseOfAnOrderlyCut() throws IOException, InterruptedException, ProblemException {
        Needs.file(KilledReading.MODEL.resolve("am/final.mdl"), "mvn compile");
        Random random = new Random(3);
        double recorded = 0;
        try (VoskEars ears = VoskEars.load(KilledReading.MODEL)) {
            for (int i = 0; i < KILLS; i++) {
                Outcome outcome = new KilledReading(folder.resolve("session-" + i), ears)
                        .killAfter(500L + random.nextInt(Kills.LATEST_MILLIS));
                assertThat(outcome.differences()).isEmpty();
                recorded += outcome.seconds();
            }
        }
        assertThat(recorded).isPositive();
    }
}
