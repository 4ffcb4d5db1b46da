package org.bookholder.wording;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Rates the places at which English text can be broken: best at punctuation, badly after an article or a preposition,
 * never between a number and its unit. After the BBC Subtitle Guidelines: break at punctuation; not between article and
 * noun, preposition and phrase, conjunction and clause, pronoun and verb, or the parts of a verb.
 */
public final class PhraseBreaks {
    /** Kinds of place between two words, from the best for a break to the worst. */
    public enum Place {
        /** The end of a sentence. */
        SENTENCE_END,
        /** The end of a clause. */
        CLAUSE_END,
        /** A conjunction or preposition begins a phrase. */
        BEFORE_PHRASE,
        /** Two words that nothing in particular holds together. */
        BETWEEN_WORDS,
        /** A conjunction, pronoun or auxiliary verb belongs to what follows it. */
        AFTER_CONJUNCTION,
        /** A preposition belongs to what follows it. */
        AFTER_PREPOSITION,
        /** A number in words belongs to what it counts. */
        AFTER_COUNT,
        /** An article or the like belongs to its noun. */
        AFTER_ARTICLE,
        /** Number and unit, title and name, or "step" and its number: no break. */
        INSEPARABLE
    }

    private static final Set<String> ARTICLES = Set.of(
            "a", "an", "the", "this", "that", "these", "those", "my", "your", "his", "her", "its", "our", "their",
            "every", "each", "no", "some", "any", "very", "too");
    private static final Set<String> PREPOSITIONS = Set.of(
            "about", "above", "across", "after", "against", "along", "among", "around", "at", "before", "behind",
            "below", "beneath", "beside", "between", "by", "down", "during", "for", "from", "in", "inside", "into",
            "like", "near", "of", "off", "on", "onto", "out", "over", "past", "per", "since", "through", "to", "toward",
            "towards", "under", "until", "up", "upon", "with", "within", "without", "than", "as");
    private static final Set<String> CONJUNCTIONS = Set.of(
            "and", "or", "but", "nor", "so", "because", "if", "when", "while", "where", "which", "who", "whether",
            "that's", "not", "don't", "is", "are", "was", "were", "i", "we", "you", "he", "she", "it", "they", "do",
            "does", "did", "can", "will", "would", "could", "should", "may", "might", "must", "have", "has", "had",
            "be", "been");
    private static final Set<String> OPENINGS =
            Set.of("and", "or", "but", "nor", "so", "because", "if", "when", "while", "where", "which", "who", "that");

    /** Abbreviations that belong to the name or word after them. */
    private static final Set<String> LEADING_ABBREVIATIONS = Set.of(
            "mr.", "mrs.", "ms.", "mx.", "dr.", "drs.", "prof.", "st.", "mt.", "ft.", "gen.", "gov.", "capt.", "lt.",
            "sgt.", "col.", "maj.", "rev.", "hon.", "sen.", "rep.", "pres.", "fr.", "e.g.", "i.e.", "vs.", "cf.",
            "approx.", "viz.", "ca.");

    /** Words that belong to a number after them. */
    private static final Set<String> NUMBERED = Set.of(
            "no.", "nos.", "fig.", "figs.", "vol.", "p.", "pp.", "ch.", "sec.", "art.", "eq.", "ver.", "jan.", "feb.",
            "mar.", "apr.", "jun.", "jul.", "aug.", "sep.", "sept.", "oct.", "nov.", "dec.", "figure", "part",
            "chapter", "step", "page", "lesson", "lines", "line");

    /** One letter with a full stop, as in "J. Moore"; "I." ends a sentence. */
    private static final Pattern INITIAL = Pattern.compile("[\\p{Lu}&&[^I]]\\.");

    /** Written-out numbers, which may be followed by a unit just as digits may. */
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

    private static final Pattern NOT_OF_A_WORD = Pattern.compile("[^\\p{L}\\p{N}']");

    private PhraseBreaks() {}

    /** The kind of place between two written words; {@code after} is empty at the end of the text. */
    public static Place between(String before, String after) {
        String next = bare(after);
        if (inseparable(before, after, next)) {
            return Place.INSEPARABLE;
        }
        if (endsSentence(before) && !goesOn(before, after)) {
            return Place.SENTENCE_END;
        }
        if (endsClause(before)) {
            return Place.CLAUSE_END;
        }
        String word = bare(before);
        if (ARTICLES.contains(word)) {
            return Place.AFTER_ARTICLE;
        }
        if (COUNTS.contains(word) && !next.isEmpty() && mayBeUnit(next)) {
            return Place.AFTER_COUNT;
        }
        if (PREPOSITIONS.contains(word)) {
            return Place.AFTER_PREPOSITION;
        }
        if (CONJUNCTIONS.contains(word)) {
            return Place.AFTER_CONJUNCTION;
        }
        return OPENINGS.contains(next) || PREPOSITIONS.contains(next) ? Place.BEFORE_PHRASE : Place.BETWEEN_WORDS;
    }

    /** Whether a word belongs to what follows it, so that a part can well begin with it. */
    public static boolean leads(String written) {
        String word = bare(written);
        return ARTICLES.contains(word) || PREPOSITIONS.contains(word) || CONJUNCTIONS.contains(word);
    }

    private static String bare(String written) {
        return NOT_OF_A_WORD
                .matcher(written.toLowerCase(Locale.ROOT).replace('\u2019', '\''))
                .replaceAll("");
    }

    private static boolean inseparable(String before, String after, String next) {
        if (next.isEmpty()) {
            return false;
        }
        String word = before.substring(opening(before));
        String lower = word.toLowerCase(Locale.ROOT);
        boolean numbered = NUMBERED.contains(lower) && startsWithDigit(after);
        boolean abbreviated =
                LEADING_ABBREVIATIONS.contains(lower) || INITIAL.matcher(word).matches();
        return abbreviated || numbered || (isNumber(before) && mayBeUnit(next));
    }

    /** How many quotes and brackets a word begins with. */
    private static int opening(String written) {
        int at = 0;
        while (at < written.length() && "'\"\u2018\u201c([".indexOf(written.charAt(at)) >= 0) {
            at++;
        }
        return at;
    }

    private static boolean startsWithDigit(String written) {
        return opening(written) < written.length() && isFigure(written.charAt(opening(written)));
    }

    /** Whether a full stop belongs to an abbreviation, because the next word begins with a small letter: "etc. and". */
    private static boolean goesOn(String before, String after) {
        int at = opening(after);
        return before.endsWith(".") && at < after.length() && Character.isLowerCase(after.charAt(at));
    }

    /** A preposition or conjunction is not a unit, except "in", which may mean inches. */
    private static boolean mayBeUnit(String next) {
        return next.equals("in") || !(PREPOSITIONS.contains(next) || OPENINGS.contains(next));
    }

    /** Whether the word ends in a full stop or the like, possibly followed by closing quotes or brackets and a dash. */
    private static boolean endsSentence(String written) {
        int end = without(written, written.length(), "—–-", 1);
        return endsIn(written, without(written, end, "'\"’”)]", end), ".!?…");
    }

    private static boolean endsClause(String written) {
        return endsIn(written, without(written, written.length(), "'\"’”", written.length()), ",;:—–)");
    }

    /**
     * The end of {@code text} before {@code end} when up to {@code most} trailing {@code chars} are left out; the first
     * character always stays.
     */
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

    /**
     * Whether the word is a number in digits, possibly with a currency sign. A number followed by a full stop or comma
     * does not count, because something ends there.
     */
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
