package org.bookholder.view.layout;

import java.util.Locale;
import java.util.Set;

/**
 * Where the sense of English text allows a row to end. A row should hold what is said in one breath: it never ends
 * between a number and its unit, hardly after an article or a preposition, gladly at a stop.
 */
final class RowBreakRules {
    /** More than any row can gain elsewhere. */
    static final double NEVER = 10_000;

    /** At the end of a sentence. */
    static final double STOP = -35;

    private static final double CLAUSE = -12;
    private static final double BEFORE_OPENING = -8;

    private static final Set<String> ARTICLES = Set.of(
            "a", "an", "the", "this", "that", "these", "those", "my", "your", "his", "her", "its", "our", "their",
            "every", "each", "no", "some", "any", "very", "too");
    private static final Set<String> PREPOSITIONS = Set.of(
            "about", "above", "across", "after", "against", "along", "among", "around", "at", "before", "behind",
            "below", "beneath", "beside", "between", "by", "down", "during", "for", "from", "in", "inside", "into",
            "like", "near", "of", "off", "on", "onto", "out", "over", "past", "per", "since", "through", "to", "toward",
            "towards", "under", "until", "up", "upon", "with", "within", "without", "than", "as");
    private static final Set<String> JOINTS = Set.of(
            "and", "or", "but", "nor", "so", "because", "if", "when", "while", "where", "which", "who", "whether",
            "not", "is", "are", "was", "were", "i", "we", "you", "he", "she", "it", "they", "do", "does", "did", "can",
            "will", "would", "should", "may", "must", "have", "has", "had", "be", "been");
    private static final Set<String> OPENINGS =
            Set.of("and", "or", "but", "nor", "so", "because", "if", "when", "while", "where", "which", "who", "that");
    private static final Set<String> TITLES = Set.of("mr.", "mrs.", "ms.", "dr.", "prof.", "st.");

    /** A number may follow, and then belongs to them. */
    private static final Set<String> NUMBERED =
            Set.of("no.", "fig.", "vol.", "figure", "part", "chapter", "step", "page", "lesson", "lines", "line");

    /** Written out, they may have a unit as figures have. */
    private static final Set<String> COUNTS = Set.of(
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "fifteen",
            "twenty",
            "thirty",
            "forty",
            "fifty",
            "sixty",
            "seventy",
            "eighty",
            "ninety",
            "hundred",
            "thousand",
            "million");

    private RowBreakRules() {}

    /** How ill a row would end between {@code written} and {@code next}; negative for a good place. */
    static double bond(String written, String next) {
        String lower = written.toLowerCase(Locale.ROOT);
        String opening = next.toLowerCase(Locale.ROOT);
        if (parted(written, lower, opening)) {
            return NEVER;
        }
        double bond = bond(written, lower, opening);
        boolean opens = OPENINGS.contains(opening) || PREPOSITIONS.contains(opening);
        return bond == 0 && opens ? BEFORE_OPENING : bond;
    }

    /** Whether the two make no sense in two rows. */
    private static boolean parted(String written, String lower, String next) {
        if (next.isEmpty()) {
            return false;
        }
        boolean numbered = NUMBERED.contains(lower) && isNumber(next);
        return TITLES.contains(lower) || numbered || (isNumber(written) && mayBeUnit(next));
    }

    /** What joins a phrase to a number is no unit of it; but "in" may be inches. */
    private static boolean mayBeUnit(String next) {
        return next.equals("in") || !(PREPOSITIONS.contains(next) || OPENINGS.contains(next));
    }

    private static double bond(String written, String lower, String next) {
        if (endsSentence(written)) {
            return STOP;
        }
        if (endsClause(written)) {
            return CLAUSE;
        }
        if (ARTICLES.contains(lower)) {
            return 60;
        }
        if (COUNTS.contains(lower) && !next.isEmpty() && mayBeUnit(next)) {
            return 50;
        }
        if (PREPOSITIONS.contains(lower)) {
            return 40;
        }
        return JOINTS.contains(lower) ? 20 : 0;
    }

    /** Whether the word ends in a stop, which may be followed by what closes and by a dash. */
    private static boolean endsSentence(String written) {
        int end = without(written, written.length(), "—–-", 1);
        return endsIn(written, without(written, end, "'\"’”)]", end), ".!?…");
    }

    private static boolean endsClause(String written) {
        return endsIn(written, without(written, written.length(), "'\"’”", written.length()), ",;:—–)");
    }

    /** Where {@code text} up to {@code end} ends without some of its last chars, but for the first. */
    private static int without(String text, int end, String chars, int most) {
        int at = end;
        while (at > 1 && end - at < most && chars.indexOf(text.charAt(at - 1)) >= 0) {
            at--;
        }
        return at;
    }

    private static boolean endsIn(String text, int end, String chars) {
        return end > 0 && chars.indexOf(text.charAt(end - 1)) >= 0;
    }

    /** A number in figures, perhaps of money; one with a stop or comma behind it is the end of something. */
    private static boolean isNumber(String written) {
        int from = !written.isEmpty() && "$£€¥#".indexOf(written.charAt(0)) >= 0 ? 1 : 0;
        int to = written.length();
        if (from == to || !isFigure(written.charAt(from)) || !isFigure(written.charAt(to - 1))) {
            return false;
        }
        for (int i = from; i < to; i++) {
            if (!isFigure(written.charAt(i)) && ".,:/×-".indexOf(written.charAt(i)) < 0) {
                return false;
            }
        }
        return true;
    }

    private static boolean isFigure(char c) {
        int type = Character.getType(c);
        return type == Character.DECIMAL_DIGIT_NUMBER
                || type == Character.LETTER_NUMBER
                || type == Character.OTHER_NUMBER;
    }
}
