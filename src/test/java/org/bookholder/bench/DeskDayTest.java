package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Browser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** A day of six lessons with three people at the desk, in short: no act is lost, done twice or on a wrong line. */
@Timeout(value = 600, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class DeskDayTest {
    private static final long SEED = Long.getLong("desk.day.seed", 1);

    @TempDir
    private Path folder;

    @Test
    void noActIsLostDoubledOrOnAWrongLine() throws IOException, InterruptedException, ProblemException {
        Browser.needed();
        assertThat(DeskDay.quick(folder, SEED, 2)).isEmpty();
    }
}
