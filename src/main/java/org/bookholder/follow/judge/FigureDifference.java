package org.bookholder.follow.judge;

import java.time.Month;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.bookholder.script.normalize.FreeReading;
import org.bookholder.script.pronounce.SoundAlike;

/**
 * How what was said differs from the nearest of the ways to say a figure: by words that change its value, and by no others. An ear's
 * mistake puts other words there, too ("a tea" for "eighty"), and is no proof.
 */
final class FigureDifference {
    /** Words without which, or with which, a figure is another one; beside the number words and {@link #POINT}. */
    private static final Set<String> DECISIVE =
            Set.of("minus", "negative", "percent", "half", "quarter", "quarters", "squared", "cubed");

    /** It may be left out between digits ("five nine"), but not before them all. */
    private static final String POINT = "point";

    private static final Set<String> DIGITS =
            Set.of("oh", "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine");

    /** Words that come and go with the numbers beside them. */
    private static final Set<String> BETWEEN =
            Set.of("to", "and", "of", "over", "by", "through", "a", "the", "per", "dot", "slash", "out", "in");

    /** "A hundred" and "one hundred" are the same. */
    private static final Set<String> SCALES = Set.of("hundred", "thousand", "million", "billion");

    private static final Set<String> ONE = Set.of("a", "one");

    /** "A m" and "p m" are heard in two words. */
    private static final Set<String> HALVES_OF_A_DAY = Set.of("a", "p");

    private static final Set<String> MONTHS = Arrays.stream(Month.values())
            .map(month -> month.name().toLowerCase(Locale.ROOT))
            .collect(Collectors.toUnmodifiableSet());

    /** For each of the nearest ways, by what it differs. */
    private final List<List<Difference>> nearest;

    private FigureDifference(List<List<Difference>> nearest) {
        this.nearest = nearest;
    }

    /**
     * Compares what was said with the nearest of the ways to say a figure.
     *
     * @param forms the ways to say it, at least one
     * @param said what was said
     */
    static FigureDifference of(List<List<String>> forms, List<String> said) {
        List<List<Difference>> nearest = new ArrayList<>();
        List<String> plainlySaid = plain(said);
        for (List<String> form : forms) {
            List<Difference> differences = differences(plain(form), plainlySaid);
            if (!nearest.isEmpty() && differences.size() < nearest.get(0).size()) {
                nearest.clear();
            }
            if (nearest.isEmpty() || differences.size() == nearest.get(0).size()) {
                nearest.add(differences);
            }
        }
        return new FigureDifference(nearest);
    }

    /** In how many words it differs. */
    int size() {
        return nearest.get(0).size();
    }

    /** Whether the value is another one. */
    boolean changesValue() {
        return nearest.stream().anyMatch(FigureDifference::decide);
    }

    /** Whether the value is another one by words that stand for others and don't sound like them. */
    boolean clearlyChangesValue() {
        return nearest.stream()
                .anyMatch(differences ->
                        decide(differences) && differences.stream().allMatch(one -> one.isBetween() || one.isClear()));
    }

    /** Without what may stand before "hundred" and the like or be left out. */
    private static List<String> plain(List<String> words) {
        return IntStream.range(0, words.size())
                .filter(i -> i + 1 == words.size() || !ONE.contains(words.get(i)) || !SCALES.contains(words.get(i + 1)))
                .mapToObj(words::get)
                .toList();
    }

    private static boolean decide(List<Difference> differences) {
        List<Difference> weighty =
                differences.stream().filter(one -> !one.isBetween()).toList();
        return !weighty.isEmpty() && weighty.stream().allMatch(Difference::isDecisive);
    }

    /**
     * One word for another.
     *
     * @param written empty if it was added
     * @param said empty if it is missing
     * @param first whether it is at the beginning
     */
    private record Difference(String written, String said, boolean first) {
        /** Whether a word that comes between numbers, or a unit behind them, is missing or was added, or is in another number. */
        boolean isBetween() {
            if (written.isEmpty() || said.isEmpty()) {
                String one = written + said;
                return one.equals(POINT) ? !first && said.isEmpty() : BETWEEN.contains(one) || FreeReading.isUnit(one);
            }
            return FreeReading.areTheSameUnit(written, said);
        }

        /** Whether one word stands for another that sounds different. */
        boolean isClear() {
            return !written.isEmpty()
                    && !said.isEmpty()
                    && SoundAlike.distance(written, said) > OtherMeaning.NEARLY_THE_SAME;
        }

        /** Whether a value is another one by it. */
        boolean isDecisive() {
            if (written.isEmpty() || said.isEmpty()) {
                String one = written + said;
                return one.equals(POINT) || DECISIVE.contains(one) || OtherMeaning.isNumber(one);
            }
            return OtherMeaning.areOfOneKind(written, said)
                    || FreeReading.areDifferentUnits(written, said)
                    || (written.equals(POINT) && DIGITS.contains(said))
                    || (said.equals(POINT) && DIGITS.contains(written))
                    || (HALVES_OF_A_DAY.contains(written) && HALVES_OF_A_DAY.contains(said))
                    || (MONTHS.contains(written) && MONTHS.contains(said));
        }
    }

    /** Pairs of words that differ, in the alignment with the fewest such pairs. */
    private static List<Difference> differences(List<String> form, List<String> said) {
        int[][] cost = new int[form.size() + 1][said.size() + 1];
        for (int i = 0; i <= form.size(); i++) {
            for (int j = 0; j <= said.size(); j++) {
                cost[i][j] = i == 0 || j == 0
                        ? i + j
                        : Math.min(
                                cost[i - 1][j - 1] + (form.get(i - 1).equals(said.get(j - 1)) ? 0 : 1),
                                1 + Math.min(cost[i - 1][j], cost[i][j - 1]));
            }
        }
        List<Difference> differences = new ArrayList<>();
        int i = form.size();
        int j = said.size();
        while (i + j > 0) {
            boolean both = i > 0 && j > 0;
            int step = both && form.get(i - 1).equals(said.get(j - 1)) ? 0 : 1;
            if (both && cost[i][j] == cost[i - 1][j - 1] + step) {
                i--;
                j--;
                if (step > 0) {
                    differences.add(new Difference(form.get(i), said.get(j), i == 0));
                }
            } else if (i > 0 && cost[i][j] == cost[i - 1][j] + 1) {
                differences.add(new Difference(form.get(--i), "", i == 0));
            } else {
                differences.add(new Difference("", said.get(--j), i == 0));
            }
        }
        return differences;
    }
}
