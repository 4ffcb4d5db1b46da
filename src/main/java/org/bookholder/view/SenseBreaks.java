package org.bookholder.view;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Where the sense of English text allows a row to end. A row should hold what is said in one breath: it never ends
 * between a number and its unit, hardly after an article or a preposition, gladly at a stop.
 */
final class SenseBreaks {
    /** More than any row can gain elsewhere. */
    static final double NEVER = 10_000;

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
            "not", "is", "are", "was", "were", "i", "we", "you", "he", "she", "it", "they");
    private static final Set<String> OPENINGS =
            Set.of("and", "or", "but", "nor", "so", "because", "if", "when", "while", "where", "which", "who", "that");
    private static final Set<String> TITLES = Set.of(
            "mr.", "mrs.", "ms.", "dr.", "prof.", "st.", "no.", "fig.", "vol.", "chapter", "step", "page", "lesson");
    private static final Pattern SENTENCE_END = Pattern.compile(".*[.!?…]['\"’”)\\]]*[—–-]?");
    private static final Pattern CLAUSE_END = Pattern.compile(".*[,;:—–)]['\"’”]*");
    private static final Pattern NUMBER = Pattern.compile("[$£€¥#]?\\p{N}[\\p{N}.,:/×-]*(?:½|¼|¾)?");

    private SenseBreaks() {}

    /** How ill a row would end between {@code written} and {@code next}; negative for a good place. */
    static double bond(String written, String next) {
        double bond = bond(written);
        String opening = next.toLowerCase(Locale.ROOT);
        boolean opens = OPENINGS.contains(opening) || PREPOSITIONS.contains(opening);
        return bond == 0 && opens ? -8 : bond;
    }

    private static double bond(String written) {
        String lower = written.toLowerCase(Locale.ROOT);
        if (TITLES.contains(lower) || NUMBER.matcher(written).matches()) {
            return NEVER;
        }
        if (SENTENCE_END.matcher(written).matches()) {
            return -35;
        }
        if (CLAUSE_END.matcher(written).matches()) {
            return -12;
        }
        if (ARTICLES.contains(lower)) {
            return 60;
        }
        if (PREPOSITIONS.contains(lower)) {
            return 40;
        }
        return JOINTS.contains(lower) ? 20 : 0;
    }

    /** Whether a sentence ends with the word. */
    static boolean endsSentence(Piece piece) {
        return SENTENCE_END.matcher(piece.text()).matches();
    }
}
