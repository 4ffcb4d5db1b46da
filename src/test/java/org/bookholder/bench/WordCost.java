package org.bookholder.bench;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Measures whether a recognised word costs more in a longer script: {@link LiveWordBenchmark}, and the ratio. Processor
 * time counts.
 */
public final class WordCost {
    private static final double TO_REACH = 1.3;

    private WordCost() {}

    /** Measures and prints. */
    public static void main(String[] args) throws RunnerException {
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .include(LiveWordBenchmark.class.getName())
                        .build())
                .run();
        List<Double> micros = new ArrayList<>();
        for (RunResult result : results) {
            double cost = sum(result, "cpuNanos") / sum(result, "words") / 1_000;
            micros.add(cost);
            System.out.printf(
                    Locale.ROOT,
                    "%s script words: %.1f us a recognised word%n",
                    result.getParams().getParam("scriptWords"),
                    cost);
        }
        double ratio = micros.get(micros.size() - 1) / micros.get(0);
        System.out.printf(Locale.ROOT, "the last to the first: %.2f (to reach: %.1f at most)%n", ratio, TO_REACH);
    }

    private static double sum(RunResult result, String counter) {
        return Objects.requireNonNull(result.getSecondaryResults().get(counter), counter)
                .getStatistics()
                .getSum();
    }
}
