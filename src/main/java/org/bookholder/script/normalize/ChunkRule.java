package org.bookholder.script.normalize;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads whatever no other rule knows, piece by piece: "12-inch", "MP3", "C++", "and/or", "cart.py", "info@example.com".
 */
final class ChunkRule {
    /** If there are more pieces than this, only the preferred form of each is kept. */
    private static final int MOST_PIECES = 40;

    private static final Pattern NUMBER = Pattern.compile(NormalizationRule.NUMBER);
    private static final Pattern DIGITS = Pattern.compile("\\d{1,60}");
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{M}]{1,99}(?:'[\\p{L}\\p{M}]{1,30}){0,3}");

    /** The opening of a lens: "f/2.8", "f two eight". */
    private static final Pattern APERTURE = Pattern.compile("[fF]/(\\d{1,2})\\.(\\d)(?!\\d)");

    /** A letter of a product with a Greek one: "πr", "μg". */
    private static final Pattern FACTOR =
            Pattern.compile("[α-ωΑ-Ω](?=[A-Za-z\\d²³]|$)|[A-Za-z](?=[α-ωΑ-Ω])|(?<=[α-ωΑ-Ω²³])[A-Za-z](?![A-Za-z])");

    private static final Pattern SCHEME = Pattern.compile("(https?)://");

    /** Endings of addresses that nobody spells. */
    private static final Set<String> DOMAINS = Set.of("com", "org", "net", "edu", "gov", "info", "name");

    private static final Pattern OPTION = Pattern.compile("--?(?=[A-Za-z])");
    private static final Pattern STARS = Pattern.compile("([★⭐]{1,10})[☆★]{0,10}");

    /** Behind these letters a number is that of a model, whose digits may be said one by one. */
    private static final Pattern MODEL = Pattern.compile("\\p{L}-?$");

    /** Figures and capitals mixed: "1A23", "21A". */
    private static final Pattern CODE = Pattern.compile("\\d{1,3}[A-Z](?:\\d{1,3}|/[A-Z])?\\W{0,3}");

    private static final Pattern FRACTION =
            Pattern.compile("\\d{1,2}/\\d{1,2}(?![\\d/])|[\\u00bc-\\u00be\\u2150-\\u215e]");
    private static final Pattern ADDRESS = Pattern.compile("[\\p{L}\\d]\\.\\p{L}|@|:/");
    private static final Pattern HYPHENATED = Pattern.compile("[\\p{L}\\p{M}']{1,40}-[\\p{L}\\p{M}']{1,40}");

    /** Prefixes that are not words by themselves, so that what follows the hyphen does not count as another word. */
    private static final Pattern PREFIXED =
            Pattern.compile("(?:anti|bi|co|de|dis|mid|mis|multi|non|pre|re|semi|sub|tri|un)-.*");

    /** Behind these a dash is a minus: "x=-5". */
    private static final String BEFORE_SIGN = "([=<>\u2264\u2265~\u2248*\u00d7\u00f7+";

    /** One letter by another, perhaps with a Greek one before: "V/I". */
    private static final Pattern QUOTIENT = Pattern.compile("[(]?[α-ωΑ-Ω]?\\p{L}/[α-ωΑ-Ω]?\\p{L}[.,;:!?)]{0,3}");

    /** A version and its build: "1.24.0-1". */
    private static final Pattern BUILD = Pattern.compile("[vV]?\\d+\\.\\d+\\.\\d+-\\d.*");

    /** Time before something happens: "T-10". */
    private static final Pattern COUNTDOWN = Pattern.compile("[LT][-\u2013\u2212]\\d.*");

    /** "A-Z". */
    private static final Pattern BETWEEN_LETTERS = Pattern.compile("[(\"']?[A-Z][-\u2013][A-Z][.,;:!?)\"']{0,3}");

    /** An ordinal number or a decade, behind which a dash means a range. */
    private static final Pattern COUNTED = Pattern.compile("\\d(?:st|nd|rd|th|s)$");

    private static final Pattern RATE = Pattern.compile(Units.COMPOUND + NormalizationRule.END);

    /** Before an index, "f[0]": "f zero", "f of zero", "f sub zero". */
    private static final SpokenForms INDEX =
            SpokenForms.of("", "of", "sub", "at", "bracket", "open bracket", "square bracket");

    /** The ending of a word that was put into a quotation: "call[ed]". */
    private static final Pattern ENDING =
            Pattern.compile("(\\p{L}{2,30})\\[(s|e[sdr]|d|ing|ly|e?n)\\][.,;:!?)\"']{0,3}");

    private static final SpokenForms HASH = SpokenForms.of("hashtag", "number", "hash");

    private record Piece(int end, SpokenForms forms) {}

    private final NumberWords numbers;
    private final Fractions fractions;
    private final MoneyRule money;
    private final NumberRule number;
    private final VersionRule versions;

    ChunkRule(NumberWords numbers, Fractions fractions, MoneyRule money, NumberRule number) {
        this.numbers = numbers;
        this.fractions = fractions;
        this.money = money;
        this.number = number;
        this.versions = new VersionRule(numbers);
    }

    /** The ways to say {@code chunk}, a written word in plain typography; none if it contains nothing to say. */
    SpokenForms of(String chunk) {
        String word = chunk.replaceAll("^[(\"']+|[.,;:!?)\"']+$", "");
        SpokenForms named = Formulae.named(word);
        if (!named.isEmpty()) {
            return named;
        }
        Matcher ending = ENDING.matcher(chunk);
        if (ending.matches()) {
            return LetterForms.of(ending.group(1) + ending.group(2)).or(inPieces(chunk));
        }
        // without a figure it may as well be a word: "NaN"
        SpokenForms spelled = Formulae.spelled(word);
        boolean figures = word.chars().anyMatch(Character::isDigit);
        return figures
                ? spelled.or(inPieces(chunk))
                : inPieces(chunk).or(spelled).or(Initials.of(word));
    }

    private SpokenForms inPieces(String chunk) {
        List<SpokenForms> pieces = new ArrayList<>();
        int at = 0;
        while (at < chunk.length()) {
            Piece piece = pieceAt(chunk, at);
            pieces.add(piece.forms);
            at = Math.max(at + 1, piece.end);
        }
        if (pieces.size() > MOST_PIECES) {
            List<String> words = new ArrayList<>();
            pieces.forEach(piece -> words.addAll(piece.first()));
            return new SpokenForms(List.of(words)).spoken();
        }
        SpokenForms forms = SpokenForms.SILENT;
        for (SpokenForms piece : pieces) {
            forms = forms.then(piece);
        }
        return joined(chunk, forms.spoken()).or(rate(chunk));
    }

    private Piece pieceAt(String chunk, int at) {
        Matcher stop = at == 0 ? NormalizationRule.match(APERTURE, chunk, at, chunk.length()) : null;
        if (stop != null) {
            SpokenForms point = SpokenForms.of("point", "");
            SpokenForms number =
                    numbers.counted(stop.group(1)).preferred().then(point).then(numbers.digits(stop.group(2)));
            return new Piece(stop.end(), SpokenForms.of("f", "f slash").then(number));
        }
        Piece known = numeralAt(chunk, at);
        if (known != null) {
            return known;
        }
        Piece start = startAt(chunk, at);
        if (start != null) {
            return start;
        }
        SpokenSpan sign = Powers.at(chunk, at);
        sign = sign == null ? Operators.at(chunk, at) : sign;
        if (sign != null) {
            return new Piece(sign.end(), sign.forms());
        }
        SpokenSpan dotted = AbbreviationRule.dottedLettersAt(chunk, at, chunk.length());
        if (dotted != null) {
            return new Piece(dotted.end(), dotted.forms());
        }
        Matcher factor = NormalizationRule.match(FACTOR, chunk, at, chunk.length());
        if (factor != null) {
            SpokenForms letter = LetterForms.of(factor.group());
            if (at > 0 && "²³".indexOf(chunk.charAt(at - 1)) >= 0) {
                return new Piece(factor.end(), SpokenForms.of("", "times").then(letter));
            }
            boolean more = factor.end() < chunk.length() && Character.isLetter(chunk.charAt(factor.end()));
            return new Piece(factor.end(), more ? letter.then("", "times") : letter);
        }
        Matcher word = NormalizationRule.match(WORD, chunk, at, chunk.length());
        if (word != null) {
            return new Piece(word.end(), word(chunk, at, word));
        }
        return symbolAt(chunk, at);
    }

    /** A rate without its number, as behind a power: "m/s". */
    private static SpokenForms rate(String chunk) {
        Matcher rate = chunk.indexOf('/') < 0 ? null : NormalizationRule.match(RATE, chunk, 0, chunk.length());
        return rate == null ? SpokenForms.NONE : Units.compound(rate, 1, false);
    }

    /** The beginning of an address or of an option of a command, or a row of stars. */
    private @Nullable Piece startAt(String chunk, int at) {
        Matcher scheme = NormalizationRule.match(SCHEME, chunk, at, chunk.length());
        if (scheme != null) {
            String spelled = LetterForms.spell(scheme.group(1));
            return new Piece(scheme.end(), SpokenForms.of("", spelled, spelled + " colon slash slash"));
        }
        Matcher option = at == 0 ? NormalizationRule.match(OPTION, chunk, at, chunk.length()) : null;
        if (option != null) {
            return new Piece(
                    option.end(),
                    option.end() == 1
                            ? SpokenForms.of("", "dash", "minus", "hyphen")
                            : SpokenForms.of("", "dash dash", "double dash", "minus minus"));
        }
        Matcher stars = NormalizationRule.match(STARS, chunk, at, chunk.length());
        boolean counted = isDigit(chunk, at - 1);
        if (stars == null || (stars.end() - at == 1 && !counted)) {
            return null;
        }
        int count = stars.group(1).length();
        return new Piece(
                stars.end(),
                counted
                        ? SpokenForms.of("stars", "star")
                        : numbers.cardinal(count).preferred().then(count == 1 ? "star" : "stars"));
    }

    private SpokenForms word(String chunk, int at, Matcher word) {
        String letters = word.group();
        boolean behindDigit = isDigit(chunk, at - 1);
        if (behindDigit && letters.equals("ish")) {
            return SpokenForms.of("ish");
        }
        if (behindDigit && letters.equals("x")) {
            return isDigit(chunk, word.end()) ? SpokenForms.of("by", "times", "x") : SpokenForms.of("x", "times");
        }
        SpokenForms forms = LetterForms.of(letters).spoken();
        if (at == 1 && chunk.charAt(0) == '-' && letters.matches("[a-z]{2,4}")) {
            return forms.or(LetterForms.spell(letters));
        }
        boolean domain = at > 1 && chunk.charAt(at - 1) == '.' && Character.isLetterOrDigit(chunk.charAt(at - 2));
        if (domain && letters.length() < 5 && !DOMAINS.contains(letters)) {
            forms = forms.first(1).or(LetterForms.spell(letters)).or(forms);
        }
        return forms.all().stream()
                        .flatMap(List::stream)
                        .anyMatch(w -> w.codePoints().anyMatch(Character::isLetter))
                ? forms
                : SpokenForms.SILENT;
    }

    private @Nullable Piece numeralAt(String chunk, int at) {
        char c = chunk.charAt(at);
        if (Character.isLetter(c)) {
            return null;
        }
        SpokenSpan heard = versions.partsAt(chunk, at);
        heard = heard == null ? money.amountAt(chunk, at, chunk.length()) : heard;
        if (heard == null && isDigit(chunk, at)) {
            heard = number.decadeOrOrdinalAt(chunk, at, chunk.length(), false);
        }
        if (heard == null && NormalizationRule.match(FRACTION, chunk, at, chunk.length()) != null) {
            heard = fractions.at(chunk, at, chunk.length());
        }
        if (heard != null) {
            return new Piece(heard.end(), heard.forms());
        }
        Matcher m = NormalizationRule.match(NUMBER, chunk, at, chunk.length());
        if (m != null) {
            SpokenForms said = numbers.written(m.group());
            boolean model = m.group().matches("\\d{2,3}")
                    && (MODEL.matcher(chunk.substring(0, at)).find()
                            || CODE.matcher(chunk).matches());
            return new Piece(m.end(), model ? said.or(numbers.digits(m.group())) : said);
        }
        m = NormalizationRule.match(DIGITS, chunk, at, chunk.length());
        return m == null ? null : new Piece(m.end(), numbers.digits(m.group()));
    }

    private static Piece symbolAt(String chunk, int at) {
        String symbol = chunk.substring(at, at + 1);
        boolean inside = at > 0 && at + 1 < chunk.length();
        return new Piece(
                at + 1,
                switch (symbol) {
                    case "." -> inside && isInWord(chunk, at) ? SpokenForms.of("dot", "", "point") : SpokenForms.SILENT;
                    case "#" -> at == 1 && Character.isLetter(chunk.charAt(0)) ? SpokenForms.of("sharp", "hash") : HASH;
                    case "/" -> slash(chunk, at);
                    case "(" ->
                        at == 1 && inside && Character.isLetter(chunk.charAt(0))
                                ? SpokenForms.of("of", "")
                                : SpokenForms.SILENT;
                    case "[" -> inside && Character.isLetterOrDigit(chunk.charAt(at - 1)) ? INDEX : SpokenForms.SILENT;
                    case ":" ->
                        inside && chunk.lastIndexOf('[', at) > 0 && isDigit(chunk, at + 1)
                                ? SpokenForms.of("to", "", "colon")
                                : SpokenForms.SILENT;
                    case "_" -> inside ? SpokenForms.of("", "underscore") : SpokenForms.SILENT;
                    case "-", "\u2013", "\u2212" -> dash(chunk, at);
                    case "|" -> inside ? SpokenForms.of("", "pipe", "or") : Symbols.of(symbol);
                    case "*" ->
                        inside && isDigit(chunk, at - 1) && isDigit(chunk, at + 1)
                                ? SpokenForms.of("times")
                                : SpokenForms.SILENT;
                    default -> Symbols.of(symbol);
                });
    }

    /** Before a number: a sign, which must be said, or what separates it from the number before. */
    private static SpokenForms dash(String chunk, int at) {
        if (chunk.equals("\u2212")) {
            return SpokenForms.of("minus", "take away", "less");
        }
        if (COUNTDOWN.matcher(chunk).matches()) {
            return SpokenForms.of("", "minus", "dash");
        }
        if (BETWEEN_LETTERS.matcher(chunk).matches()) {
            return SpokenForms.of("to", "through", "", "dash");
        }
        if (at > 2
                && isDigit(chunk, at + 1)
                && COUNTED.matcher(chunk.substring(0, at)).find()) {
            return SpokenForms.of("to", "through", "");
        }
        if (!isDigit(chunk, at + 1) && !(chunk.startsWith(".", at + 1) && isDigit(chunk, at + 2))) {
            return SpokenForms.SILENT;
        }
        if (isDigit(chunk, at - 1)) {
            if (BUILD.matcher(chunk).matches()) {
                return SpokenForms.of("dash", "", "minus");
            }
            return chunk.charAt(at) == '\u2212' || chunk.indexOf('=', at) > 0
                    ? SpokenForms.of("minus", "take away", "less")
                    : SpokenForms.of("to", "", "dash", "minus");
        }
        return at == 0 || BEFORE_SIGN.indexOf(chunk.charAt(at - 1)) >= 0
                ? SpokenForms.of("minus", "negative")
                : SpokenForms.SILENT;
    }

    private static SpokenForms slash(String chunk, int at) {
        if (QUOTIENT.matcher(chunk).matches()) {
            return SpokenForms.of("", "over", "slash", "or", "divided by", "per");
        }
        if (chunk.length() == 1) {
            return SpokenForms.of("slash", "or", "per", "a", "and", "over", "");
        }
        if (chunk.indexOf('\u00b2') > 0 || chunk.indexOf('\u00b3') > 0) {
            return SpokenForms.of("over", "divided by", "per", "slash");
        }
        if (at == 0 || at + 1 == chunk.length()) {
            return SpokenForms.SILENT;
        }
        boolean address = ADDRESS.matcher(chunk).find() || chunk.indexOf('/') != chunk.lastIndexOf('/');
        String behind = chunk.substring(at + 1);
        boolean rate = isDigit(chunk, at - 1) && Character.isLetter(behind.charAt(0));
        return address
                ? SpokenForms.of("slash", "")
                : rate
                        ? SpokenForms.of("per", Units.article(Typography.lower(behind)), "slash")
                        : isDigit(chunk, at - 1) && isDigit(chunk, at + 1)
                                ? behind.matches("1\\D*")
                                        ? SpokenForms.of("", "to", "out of", "over", "or", "slash")
                                        : SpokenForms.of("", "out of", "over", "or", "slash")
                                : Units.isSymbol(chunk.substring(0, at))
                                        ? SpokenForms.of("", "or", "slash")
                                        : SpokenForms.of("", "or", "slash", "and");
    }

    /**
     * Whether a full stop belongs to a word: one between lower-case letters or digits is said, one before a capital is
     * the end of a sentence whose space is missing.
     */
    private static boolean isInWord(String chunk, int at) {
        char next = chunk.charAt(at + 1);
        return Character.isLetterOrDigit(chunk.charAt(at - 1))
                && Character.isLetterOrDigit(next)
                && !Character.isUpperCase(next);
    }

    private static SpokenForms joined(String chunk, SpokenForms forms) {
        if (chunk.matches("\\d.*ish[.,;:!?]?")) {
            return forms.or(new SpokenForms(forms.all().stream()
                    .map(form -> List.of(
                            String.join(" ", form).replaceFirst(" ish$", "ish").split(" ", -1)))
                    .toList()));
        }
        if (chunk.indexOf('-') < 0) {
            return forms;
        }
        String word = chunk.replaceAll("^[^\\p{L}\\p{N}\\p{Sc}]{1,9}|[^\\p{L}\\p{N}\\p{Sc}]{1,9}$", "");
        if (!HYPHENATED.matcher(word).matches()) {
            return forms;
        }
        SpokenForms joined = LetterForms.of(word.replace("-", "").replaceAll("^'+|'+$", ""));
        String lower = Typography.lower(word);
        return PREFIXED.matcher(lower).matches() ? joined.preferred().or(forms) : forms.or(joined.preferred());
    }

    private static boolean isDigit(String chunk, int at) {
        return at >= 0 && at < chunk.length() && chunk.charAt(at) >= '0' && chunk.charAt(at) <= '9';
    }
}
