package org.bookholder.bench;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.bookholder.bench.Score.Lengths;
import org.bookholder.bench.Score.Share;

/** The rows of the table of accuracy. */
final class Measures {
    /** In the table's order. */
    static final List<Measure> ALL = List.of(
            new Measure("lost-precision", "skipped and incomplete lines, precision", "1.00", s -> found(s.lostTrue)),
            new Measure("lost-recall", "skipped and incomplete lines, recall", "1.00", s -> found(s.lostFound)),
            new Measure("misread", "misread lines found", "0.95", s -> found(s.misread())),
            new Measure("swapped", "- of these with a word swapped", "", s -> found(s.swapped)),
            new Measure("dropped", "- with a word dropped", "", s -> found(s.dropped)),
            new Measure("added", "- with a word added", "", s -> found(s.added)),
            new Measure("wrongly-called", "clean lines wrongly called", "0.01", s -> fault(s.wronglyCalled)),
            new Measure("retakes", "retakes found", "0.98", s -> found(s.retakes)),
            new Measure("false-retakes", "false retakes, of lines", "0", s -> fault(s.falseRetakes)),
            new Measure("best", "best attempt is the last complete one", "", s -> found(s.bestRight)),
            new Measure("bounds", "best attempt's bounds, 95 %", "0.12 s", s -> within(s.bounds, 0.95)),
            new Measure("asides", "asides found", "0.95", s -> found(s.asides)),
            new Measure(
                    "false-asides",
                    "false asides in ten minutes",
                    "0",
                    s -> Figure.less(600 * s.falseAsides / s.seconds, "%.1f")),
            new Measure("on-line", "position on the right line", "0.99", s -> onlyLive(s, decimals(s.onLine))),
            new Measure(
                    "on-line-or-next",
                    "- or on the next, the last word said",
                    "",
                    s -> onlyLive(s, decimals(s.onLineOrNext))),
            new Measure("next", "next line shown, 95 %", "0.5 s", s -> within(s.next, 0.95)),
            new Measure("jump-median", "after a jump, median", "0.9 s", s -> within(s.jump, 0.5)),
            new Measure("jump", "after a jump, 95 %", "1.8 s", s -> within(s.jump, 0.95)),
            new Measure("carried-off", "carried off by an aside", "0", s -> onlyLive(s, fault(s.carriedOff))),
            new Measure("never-reached", "lines never reached", "0", s -> onlyLive(s, fault(s.neverReached))));

    private Measures() {}

    /**
     * A row.
     *
     * @param name in the file of floors
     * @param label in the table
     * @param toReach the figure to reach for a native reader; empty if none is set
     * @param figure what it measures
     */
    record Measure(String name, String label, String toReach, Function<Score, Figure> figure) {
        Figure of(Score score) {
            return figure.apply(score);
        }
    }

    /** The row of a name. */
    static Measure named(String name) {
        return ALL.stream()
                .filter(m -> m.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no measure is named '" + name + "'"));
    }

    /**
     * A measure's figure.
     *
     * @param value not a number if there was nothing to measure
     * @param moreIsBetter whether a greater one is better
     * @param shown as the table has it
     */
    record Figure(double value, boolean moreIsBetter, String shown) {
        static Figure more(double value, String format) {
            return new Figure(value, true, String.format(Locale.ROOT, format, value));
        }

        static Figure less(double value, String format) {
            return new Figure(value, false, String.format(Locale.ROOT, format, value));
        }

        static Figure nothing() {
            return new Figure(Double.NaN, true, "-");
        }

        /** Whether the figure is as good as {@code limit} or better. */
        boolean reaches(double limit) {
            return moreIsBetter ? value >= limit : value <= limit;
        }
    }

    /** A table in Markdown; the columns' names and scores in the same order. */
    static String table(List<String> names, List<Score> scores) {
        StringBuilder out = new StringBuilder("| | to reach | ");
        out.append(String.join(" | ", names)).append(" |\n|---|---|");
        out.append("---|".repeat(names.size())).append('\n');
        for (Measure measure : ALL) {
            out.append("| ")
                    .append(measure.label())
                    .append(" | ")
                    .append(measure.toReach())
                    .append(" |");
            scores.forEach(s -> out.append(' ').append(measure.of(s).shown()).append(" |"));
            out.append('\n');
        }
        return out.toString();
    }

    private static Figure onlyLive(Score score, Figure figure) {
        return score.onLine.all() == 0 ? Figure.nothing() : figure;
    }

    private static Figure found(Share share) {
        return share.all() == 0 ? Figure.nothing() : Figure.more(share.value(), "%.2f" + counts(share));
    }

    private static Figure fault(Share share) {
        return share.all() == 0 ? Figure.nothing() : Figure.less(share.value(), "%.2f" + counts(share));
    }

    private static Figure decimals(Share share) {
        return Figure.more(share.value(), "%.3f");
    }

    private static Figure within(Lengths lengths, double quantile) {
        return lengths.isEmpty() ? Figure.nothing() : Figure.less(lengths.quantile(quantile), "%.2f s");
    }

    private static String counts(Share share) {
        return " (" + share.found() + "/" + share.all() + ")";
    }
}
