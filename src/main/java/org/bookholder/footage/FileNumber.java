package org.bookholder.footage;

import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** The numbers in the names that cameras and recorders give to their files. */
final class FileNumber {
    private static final Pattern PIECE = Pattern.compile("\\d+|\\D+");

    private FileNumber() {}

    /**
     * Whether a name is the next one: a number in it, or the beginning of one, is greater by one, and all else is the same. After
     * all nines a counter begins again, at zero or at one.
     */
    static boolean follows(String name, String next) {
        List<String> before = pieces(name);
        List<String> after = pieces(next);
        if (before.size() != after.size()) {
            return false;
        }
        int counted = 0;
        for (int i = 0; i < before.size(); i++) {
            if (!before.get(i).equals(after.get(i))) {
                if (!counts(before.get(i), after.get(i))) {
                    return false;
                }
                counted++;
            }
        }
        return counted == 1;
    }

    private static boolean counts(String number, String next) {
        if (!isNumber(number) || !isNumber(next) || number.length() != next.length()) {
            return false;
        }
        if (number.matches("9+")) {
            return next.matches("0*[01]");
        }
        // Greater by a power of ten: some cameras write the part's number before the recording's, as one.
        return Long.toString(Long.parseLong(next) - Long.parseLong(number)).matches("10*");
    }

    /** Longer ones are no counters. */
    private static boolean isNumber(String piece) {
        return piece.matches("[0-9]{1,18}");
    }

    private static List<String> pieces(String name) {
        return PIECE.matcher(name.toUpperCase(Locale.ROOT))
                .results()
                .map(MatchResult::group)
                .toList();
    }
}
