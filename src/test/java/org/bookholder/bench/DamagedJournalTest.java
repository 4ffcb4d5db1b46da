package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.bookholder.bench.DamagedJournal.Damage;
import org.bookholder.bench.DamagedJournal.Outcome;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** All that is still whole in a damaged journal comes back; {@link DamagedJournals} damages many more. */
@Execution(ExecutionMode.CONCURRENT)
final class DamagedJournalTest {
    private static final int JOURNALS = 20;

    @TempDir
    private static Path folder;

    private static KeptJournal kept;

    @BeforeAll
    static void keep() throws IOException, ProblemException {
        kept = KeptJournal.of(folder, 1);
    }

    @ParameterizedTest
    @EnumSource
    void allThatIsStillWholeComesBack(Damage damage) throws IOException, ProblemException {
        long whole = 0;
        for (int seed = 0; seed < JOURNALS; seed++) {
            Outcome outcome = new DamagedJournal(kept, folder.resolve(damage + "-" + seed), seed).repair(damage);
            assertThat(outcome.back())
                    .as("%s, seed %d: %s", damage, seed, outcome)
                    .isEqualTo(outcome.whole());
            assertThat(outcome.changed()).as("seed %d", seed).isLessThanOrEqualTo(outcome.told());
            assertThat(outcome.refused()).as("seed %d", seed).isEqualTo(outcome.whole() == 0);
            whole += outcome.whole();
        }
        assertThat(whole).isPositive();
    }
}
