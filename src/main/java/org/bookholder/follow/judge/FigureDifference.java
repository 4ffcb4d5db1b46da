package org.bookholder.follow.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.bookholder.script.normalize.FreeReading;

/**
 * How what was said differs from the nearest of the ways to say a figure: by words that change its value, and by no others. An ear's
 * mistake puts other words there, too ("a tea" for "eighty"), and is no proof.
 */
final class FigureDifference {
    /** Words without which, or with which, a figure is another one; beside the number words. */
    private static final Set<String> DECISIVE =
            Set.of("minus", "negative", "point", "percent", "half", "quarter", "quarters", "squared", "cubed");

    /** Words that come and go with the numbers beside them. */
    private static final Set<String> BETWEEN =
            Set.of("to", "and", "of", "over", "by", "through", "a", "the", "per", "dot", "slash", "out", "in");

    private FigureDifference() {}

    /**
     * Whether the value is another one.
     *
     * @param forms the ways to say it
     * @param said what was said
     */
    static boolean changesValue(List<List<String>> forms, List<String> said) {
        int least = Integer.MAX_VALUE;
        boolean changes = false;
        for (List<String> form : forms) {
            List<String[]> differences = differences(form, said);
            if (differences.size() < least) {
                least = differences.size();
                changes = false;
            }
            if (differences.size() == least) {
                changes |= decide(differences);
            }
        }
        return changes;
    }

    private static boolean decide(List<String[]> differences) {
        List<String[]> weighty =
                differences.stream().filter(pair -> !isBetween(pair)).toList();
        return !weighty.isEmpty() && weighty.stream().allMatch(pair -> isDecisive(pair[0], pair[1]));
    }

    /** Whether a word that comes between numbers, or a unit behind them, is missing or was added. */
    private static boolean isBetween(String[] pair) {
        String one = pair[0] + pair[1];
        return (pair[0].isEmpty() || pair[1].isEmpty()) && (BETWEEN.contains(one) || FreeReading.isUnit(one));
    }

    /** Whether a value is another one with one word for another, either of which may be missing (empty). */
    private static boolean isDecisive(String written, String said) {
        if (written.isEmpty() || said.isEmpty()) {
            String one = written + said;
            return DECISIVE.contains(one) || (OtherMeaning.isNumber(one) && !one.equals("a"));
        }
        return OtherMeaning.areOfOneKind(written, said) || FreeReading.areDifferentUnits(written, said);
    }

    /** Pairs of words that differ, in the alignment with the fewest such pairs. */
    private static List<String[]> differences(List<String> form, List<String> said) {
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
        List<String[]> differences = new ArrayList<>();
        int i = form.size();
        int j = said.size();
        while (i + j > 0) {
            boolean both = i > 0 && j > 0;
            int step = both && form.get(i - 1).equals(said.get(j - 1)) ? 0 : 1;
            if (both && cost[i][j] == cost[i - 1][j - 1] + step) {
                i--;
                j--;
                if (step > 0) {
                    differences.add(new String[] {form.get(i), said.get(j)});
                }
            } else if (i > 0 && cost[i][j] == cost[i - 1][j] + 1) {
                differences.add(new String[] {form.get(--i), ""});
            } else {
                differences.add(new String[] {"", said.get(--j)});
            }
        }
        return differences;
    }
}
