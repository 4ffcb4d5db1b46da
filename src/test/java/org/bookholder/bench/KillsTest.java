package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.bookholder.bench.KilledReading.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** A kill of the demo's reading; {@link Kills} does many. */
@Timeout(600)
@Execution(ExecutionMode.CONCURRENT)
final class KillsTest {
    /** Some lines have been read by then, at full speed, and some are being read. */
    private static final long MILLIS = 4_000;

    @TempDir
    private Path folder;

    @Test
    void notesAfterAKillAreThoseOfAnOrderlyCut() throws IOException, InterruptedException, ProblemException {
        Needs.file(KilledReading.MODEL.resolve("am/final.mdl"), "mvn compile");
        try (VoskEars ears = VoskEars.load(KilledReading.MODEL)) {
            Outcome outcome = new KilledReading(folder.resolve("session"), ears).killAfter(MILLIS);
            assertThat(outcome.differences()).isEmpty();
            assertThat(outcome.seconds()).isPositive();
        }
    }
}
