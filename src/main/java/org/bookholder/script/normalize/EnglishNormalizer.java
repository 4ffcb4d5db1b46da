package org.bookholder.script.normalize;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Normalizes English: numbers, money, times, dates, units, abbreviations and letters. */
final class EnglishNormalizer implements TextNormalizer {
    private static final Set<String> MONTH_STARTS =
            Set.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");
    private static final String SIGNED_START = "[-+\\u2013\\u2212][.\\d$£€¥₹\\u00bc-\\u00be]";
    private static final String MONEY_START = Currencies.SIGN + "\\s?[.\\d]";
    private static final String OTHER_START =
            "the \\d|['#~<>\\u00b1\\u2248\\u2264\\u2265+(.-]{0,2}\\s?\\d|[~<>\\u00b1\\u2248\\u2264\\u2265]\\s?[$£€¥₹]|[\\u00bc-\\u00be\\u2150-\\u215e]|[Nn](?:os?|r|um)\\.|Q[1-4]";
    private static final Pattern NUMERAL_START = Pattern.compile(SIGNED_START + "|" + MONEY_START + "|" + OTHER_START);

    /** Behind these "thousand" stands for "a thousand", too. */
    private static final Pattern ARTICLE = Pattern.compile("(?i)(?:^|\\s)(?:an?|each|every|per)\\s$");

    private static final Pattern FIGURE_BEFORE = Pattern.compile("\\d(?:st|nd|rd|th)?\\s$");

    /** Words said without the leading apostrophe that replaces omitted letters. */
    private static final Set<String> SHORTENED_FRONT =
            Set.of("'tis", "'twas", "'em", "'til", "'cause", "'bout", "'cept");

    /** Words in small letters with which a numeral may begin: "the 5th", "no. 5". */
    private static final Set<String> BEFORE_NUMBER = Set.of("the", "no", "nos", "nr", "num");

    private static final int LONGEST_ABBREVIATION = 6;

    /** Longer ones are read in pieces. */
    private static final int LONGEST_PLAIN = 40;

    private final List<NormalizationRule> numeralRules;
    private final List<NormalizationRule> nameRules;
    private final BracketRule brackets;
    private final FormulaRule formulae;
    private final DateRule dates;
    private final AbbreviationRule abbreviations;
    private final ChunkRule chunks;
    private final Map<String, SpokenForms> known = new HashMap<>();

    /**
     * A normalizer.
     *
     * @param dayFirst whether 3/9 is the third of September
     */
    EnglishNormalizer(boolean dayFirst) {
        NumberWords numbers = new NumberWords();
        Fractions fractions = new Fractions(numbers);
        ScaleRule scales = new ScaleRule(numbers);
        MoneyRule money = new MoneyRule(numbers, scales);
        NumberRule number = new NumberRule(numbers, scales);
        this.dates = new DateRule(numbers, dayFirst);
        QuantityRule quantities = new QuantityRule(numbers, fractions);
        TimesRule times = new TimesRule(numbers);
        CompositeRule composites = new CompositeRule(numbers, fractions);
        this.numeralRules = List.of(
                number::first,
                new SignRule(numbers, List.of(money, times, quantities, scales, number)),
                dates,
                money,
                new TimeRule(numbers, quantities, composites),
                composites,
                new VersionRule(numbers),
                new ShutterRule(numbers),
                new Powers(),
                scales,
                times,
                quantities,
                number);
        ChordRule chords = new ChordRule(numbers);
        ChessRule chess = new ChessRule(numbers);
        ShortcutRule shortcuts = new ShortcutRule(numbers);
        this.formulae = new FormulaRule(new LatexWords(numbers, fractions));
        this.brackets = new BracketRule(numbers, shortcuts);
        this.chunks = new ChunkRule(numbers, fractions, money, number);
        this.nameRules = List.of(
                new NamedRangeRule(),
                shortcuts,
                new VersionRule(numbers),
                new BishopOrFlatRule(chess, chords),
                chords,
                chess,
                new RomanRule(numbers),
                times,
                new PathRule(chunks),
                new UnitRule());
        this.abbreviations = new AbbreviationRule();
    }

    @Override
    public SpokenSpan at(String text, int from, int chunkEnd, int to) {
        SpokenSpan inBrackets = brackets.at(text, from, to);
        if (inBrackets != null) {
            return inBrackets;
        }
        SpokenSpan formula = text.charAt(from) == '$' ? formulae.at(text, from, to) : null;
        if (formula != null) {
            return formula;
        }
        int wordEnd = wordEnd(text, from, chunkEnd);
        if (isPlainWord(text, from, wordEnd)) {
            String word = text.substring(from, wordEnd);
            SpokenForms between = between(word, text, from, wordEnd);
            return new SpokenSpan(chunkEnd, between.isEmpty() ? plainWord(word) : between);
        }
        if (isLongWord(text, from, wordEnd)) {
            return new SpokenSpan(chunkEnd, chunk(text.substring(from, chunkEnd)));
        }
        SpokenSpan numeral = numeralAt(text, from, to);
        if (numeral != null) {
            return upTo(numeral, text, to);
        }
        char first = text.charAt(from);
        for (NormalizationRule rule : nameRules) {
            SpokenSpan named = rule.mayBegin(first) ? rule.at(text, from, to) : null;
            if (named != null) {
                return named;
            }
        }
        SpokenSpan heard = abbreviations.at(text, from, to);
        return heard != null ? heard : new SpokenSpan(chunkEnd, chunk(text.substring(from, chunkEnd)));
    }

    private @Nullable SpokenSpan numeralAt(String text, int from, int to) {
        if (!startsNumeral(text, from, to)) {
            return null;
        }
        for (NormalizationRule rule : numeralRules) {
            SpokenSpan heard = rule.at(text, from, to);
            if (heard != null && !heard.forms().spoken().isEmpty()) {
                return behindArticle(withDate(heard, text, from, to), text, from);
            }
        }
        return null;
    }

    /** A range of which each end has its own form: "$75K\u2013$90K", "5'\u20136'"; what was read by itself if it is none. */
    private SpokenSpan upTo(SpokenSpan low, String text, int to) {
        boolean dash = low.end() + 1 < to && text.charAt(low.end()) == '\u2013';
        SpokenSpan high = dash ? numeralAt(text, low.end() + 1, to) : null;
        return high == null
                ? low
                : new SpokenSpan(
                        high.end(),
                        low.forms()
                                .first(6)
                                .then("to", "through")
                                .then(high.forms().first(4)));
    }

    /** "18 of 20", "4th to 8th": between two figures a small word has others beside it. */
    private static SpokenForms between(String word, String text, int from, int end) {
        boolean figures = from > 1
                && end + 1 < text.length()
                && Character.isDigit(text.charAt(end + 1))
                && FIGURE_BEFORE
                        .matcher(text.substring(Math.max(0, from - 6), from))
                        .find();
        return !figures
                ? SpokenForms.NONE
                : switch (word) {
                    case "of" -> SpokenForms.of("of", "out of");
                    case "to" -> SpokenForms.of("to", "through");
                    default -> SpokenForms.NONE;
                };
    }

    /** Behind an "a" that is written, or "each", "a hundred" is said without another one. */
    private static SpokenSpan behindArticle(SpokenSpan heard, String text, int from) {
        boolean article =
                ARTICLE.matcher(text.substring(Math.max(0, from - 8), from)).find();
        List<List<String>> bare = heard.forms().all().stream()
                .filter(form -> article && form.size() > 1 && form.get(0).equals("a"))
                .map(form -> form.subList(1, form.size()))
                .limit(6)
                .toList();
        return bare.isEmpty()
                ? heard
                : new SpokenSpan(
                        heard.end(), heard.forms().first(SpokenForms.MOST - 6).or(new SpokenForms(bare)));
    }

    /** Adds the day that a fraction such as "9/11" may be. */
    private SpokenSpan withDate(SpokenSpan heard, String text, int from, int to) {
        SpokenForms forms = heard.forms().spoken();
        SpokenSpan date = dates.uncertain(text, from, to);
        return new SpokenSpan(
                heard.end(),
                date == null || date.end() != heard.end()
                        ? forms
                        : forms.first(10).or(date.forms()));
    }

    /** Index behind a written word without the punctuation at its end. */
    private static int wordEnd(String text, int from, int chunkEnd) {
        int end = chunkEnd;
        while (end > from && ",.;:!?".indexOf(text.charAt(end - 1)) >= 0) {
            end--;
        }
        return end;
    }

    /** Whether it is a word in small letters that no rule knows. Most words are like this. */
    private static boolean isPlainWord(String text, int from, int end) {
        if (end == from || end - from > LONGEST_PLAIN || !areSmall(text, from, end)) {
            return false;
        }
        String word = text.substring(from, end);
        return !BEFORE_NUMBER.contains(word)
                && !word.equals("x")
                && !AbbreviationRule.mayBe(word)
                && !Units.isSymbol(word)
                && (word.length() < 3 || !startsMonth(text, from));
    }

    /** What {@link ChunkRule} says of a word in small letters, whatever punctuation follows. */
    private SpokenForms plainWord(String word) {
        return known.computeIfAbsent(word, letters -> LetterForms.of(letters).spoken());
    }

    /** Whether there are more lower-case letters, but perhaps for the first, than any abbreviation has. */
    private static boolean isLongWord(String text, int from, int end) {
        return end - from > LONGEST_ABBREVIATION && areSmall(text, from + 1, end) && !startsMonth(text, from);
    }

    private static boolean areSmall(String text, int from, int end) {
        for (int i = from; i < end; i++) {
            if (!isSmall(text.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    private static boolean isSmall(char c) {
        return c >= 'a' && c <= 'z';
    }

    private static boolean startsMonth(String text, int from) {
        return MONTH_STARTS.contains(Typography.lower(text.substring(from, from + 3)));
    }

    private static boolean startsNumeral(String text, int from, int to) {
        char c = text.charAt(from);
        if (Character.isLetter(c) && to - from > 3 && startsMonth(text, from)) {
            return true;
        }
        boolean word = Character.isLetter(c) && from + 1 < to && isSmall(text.charAt(from + 1));
        if (word && "tnN".indexOf(c) < 0) {
            return false;
        }
        return NormalizationRule.match(NUMERAL_START, text, from, to) != null;
    }

    private SpokenForms chunk(String chunk) {
        SpokenForms forms = known.get(chunk);
        if (forms == null) {
            forms = forms(chunk);
            known.put(chunk, forms);
        }
        return forms;
    }

    private SpokenForms forms(String chunk) {
        String lower = Typography.lower(chunk).replaceAll("[^\\p{L}']{1,9}$", "");
        if (SHORTENED_FRONT.contains(lower)) {
            return SpokenForms.of(lower, lower.substring(1));
        }
        if (lower.equals("'n'") || lower.equals("'n")) {
            return SpokenForms.of("n", "and");
        }
        SpokenForms forms = chunks.of(chunk);
        if (lower.length() > 4 && lower.endsWith("in'")) {
            forms = forms.or(lower.substring(0, lower.length() - 1) + "g", lower);
        }
        return forms;
    }
}
