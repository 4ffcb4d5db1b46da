package org.bookholder.bench;

import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.bench.Findings.LineFound;
import org.bookholder.bench.Truth.LineTruth;
import org.bookholder.wording.Labels;

/** Lists line by line where the findings differ from what happened, for people who look for the reason. */
final class Details {
    private Details() {}

    static String of(Composition reading, Findings found) {
        List<String> written =
                reading.script().lines().skip(4).filter(line -> !line.isEmpty()).toList();
        return reading.truth().lines().stream()
                .filter(line -> differs(reading.truth(), line, found.lines().get(line.line() - 1)))
                .map(line -> "  line " + line.line() + " is " + Labels.of(line.outcome())
                        + line.deviation().map(k -> " (" + Labels.of(k) + ")").orElse("") + " in "
                        + reading.truth().of(line.line()).size() + " attempts, found "
                        + found.lines().get(line.line() - 1) + ": " + written.get(line.line() - 1))
                .collect(Collectors.joining("\n"));
    }

    private static boolean differs(Truth truth, LineTruth line, LineFound found) {
        return found.outcome() != line.outcome() || (truth.of(line.line()).size() > 1) != (found.attempts() > 1);
    }
}
