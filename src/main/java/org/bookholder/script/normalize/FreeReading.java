package org.bookholder.script.normalize;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.bookholder.script.normalize.SpokenNumbers.Said;

/**
 * Whether words are a reading of figures, signs and abbreviations in a way that no rule names: digits may be grouped in any way, and an
 * abbreviation that no rule knows may be any word that has its letters in this order. No digit, no sign that changes a value, and no unit
 * may be another one. The words are English, in small letters.
 */
public final class FreeReading {
    private static final Pattern NUMBER = Pattern.compile("(\\d{1,3}(?:,\\d{3})+|\\d+)?(?:\\.(\\d+))?");
    private static final Pattern LETTERS = Pattern.compile("\\p{L}+");

    /** Currencies of which the name may follow the figures or be left out. */
    private static final Map<Character, Money> MONEY = Map.of(
            '$', new Money(Set.of("dollar", "dollars", "bucks"), Set.of("cent", "cents")),
            '£', new Money(Set.of("pound", "pounds", "quid"), Set.of("pence", "penny", "p")),
            '€', new Money(Set.of("euro", "euros"), Set.of("cent", "cents")));

    /** The names of each coin and note. */
    private static final List<Set<String>> COINS = MONEY.values().stream()
            .flatMap(money -> Stream.of(money.whole(), money.hundredth()))
            .toList();

    private record Money(Set<String> whole, Set<String> hundredth) {}

    private static final int LONGEST_ABBREVIATION = 5;

    private static final int MOST_FREE = 2;

    /** Words that change a value. */
    private static final Set<String> MEANT = Set.of(
            "minus",
            "negative",
            "not",
            "no",
            "half",
            "quarter",
            "third",
            "thirds",
            "quarters",
            "tenth",
            "tenths",
            "hundredth",
            "hundredths",
            "thousandth",
            "thousandths",
            "hundred",
            "thousand",
            "million",
            "billion",
            "percent",
            "squared",
            "cubed",
            "point",
            "am",
            "pm",
            "dollars",
            "pounds",
            "euros",
            "cents",
            "pence");

    /** Words without one of them are abbreviations, and so are words in capitals. */
    private static final Pattern VOWEL = Pattern.compile("[aeiouyAEIOUY]");

    private static final int MOST_ELEMENTS = 40;

    private final String written;
    private final List<String> said;
    private final boolean figures;
    private final Set<String> whole = new HashSet<>();
    private final Set<String> hundredth = new HashSet<>();

    private FreeReading(String written, List<String> said) {
        this.written = written;
        this.said = said;
        figures = written.chars().anyMatch(Character::isDigit);
        MONEY.forEach((sign, money) -> {
            if (written.indexOf(sign) >= 0) {
                whole.addAll(money.whole());
                hundredth.addAll(money.hundredth());
            }
        });
    }

    /** Whether there is anything that may be read freely: a digit, or an abbreviation that no rule knows. */
    public static boolean mayBe(String written) {
        return written.chars().anyMatch(Character::isDigit) || isUnknown(written.replaceAll("[.,;:!?]+$", ""));
    }

    /**
     * Where a reading may end.
     *
     * @param written as it stands in the script
     * @param from index of the first word of the reading
     * @return indexes behind its last word; empty if the words are no reading of it
     */
    public static Set<Integer> ends(String written, List<String> said, int from) {
        return new FreeReading(written, said).all(from);
    }

    /** Whether a word is the name of a unit. */
    public static boolean isUnit(String word) {
        return Units.isName(word);
    }

    /** Whether two words are names of units, or of money, that are not the same, whatever their number and spelling. */
    public static boolean areDifferentUnits(String one, String other) {
        return isMeasure(one) && isMeasure(other) && !areTheSameUnit(one, other);
    }

    /** Whether two words are names of the same unit or money, whatever their number and spelling. */
    public static boolean areTheSameUnit(String one, String other) {
        boolean money = COINS.stream().anyMatch(names -> names.contains(one) && names.contains(other));
        return money || (isMeasure(one) && isMeasure(other) && singular(one).equals(singular(other)));
    }

    private static boolean isMeasure(String word) {
        return Units.isName(word) || COINS.stream().anyMatch(names -> names.contains(word));
    }

    private static String singular(String unit) {
        String british = unit.replaceFirst("s$", "");
        return british.replaceFirst("tre$", "ter").replace("feet", "foot");
    }

    private Set<Integer> all(int from) {
        Set<Integer> ends = Set.of(from);
        int place = 0;
        for (int i = 0; place < written.length() && !ends.isEmpty() && i < MOST_ELEMENTS; i++) {
            Matcher number = NUMBER.matcher(written).region(place, written.length());
            Matcher letters = LETTERS.matcher(written).region(place, written.length());
            Set<Integer> next = new HashSet<>();
            if (number.lookingAt() && number.end() > place) {
                String whole = Optional.ofNullable(number.group(1)).orElse("").replace(",", "");
                String part = Optional.ofNullable(number.group(2)).orElse("");
                ends.forEach(end -> next.addAll(number(whole, part, end)));
                place = number.end();
            } else if (letters.lookingAt()) {
                String word = letters.group();
                boolean alone =
                        word.length() == written.replaceAll("[.,;:!?]+$", "").length();
                ends.forEach(end -> next.addAll(letters(word, alone, end)));
                place = letters.end();
            } else {
                next.addAll(sign(place, ends));
                place++;
            }
            ends = next;
        }
        ends = place < written.length() ? Set.of() : ends;
        ends = new HashSet<>(ends);
        ends.remove(from);
        return ends;
    }

    private Set<Integer> sign(int place, Set<Integer> ends) {
        Set<Integer> next = new HashSet<>();
        List<String> ways = SignWords.of(written, place);
        ends.forEach(end -> ways.forEach(way -> words(way, end).ifPresent(next::add)));
        if (figures && SignWords.isNamedFreely(written.charAt(place))) {
            ends.forEach(end -> next.addAll(free(end)));
            next.removeAll(ways.contains("") ? Set.of() : ends);
        }
        return next;
    }

    /** Where up to two words may end of which nothing is known but that they are neither figures nor units. */
    private Set<Integer> free(int from) {
        Set<Integer> ends = new HashSet<>();
        for (int end = from; end <= from + MOST_FREE && end <= said.size(); end++) {
            ends.add(end);
            if (end == said.size() || !isFree(said.get(end))) {
                break;
            }
        }
        return ends;
    }

    private static boolean isFree(String word) {
        return word.length() > 1
                && !Units.isName(word)
                && !MEANT.contains(word)
                && SpokenNumbers.at(List.of(word), 0).isEmpty();
    }

    private Optional<Integer> words(String way, int from) {
        if (way.isEmpty()) {
            return Optional.of(from);
        }
        List<String> words = List.of(way.split(" ", -1));
        int end = from + words.size();
        return end <= said.size() && said.subList(from, end).equals(words) ? Optional.of(end) : Optional.empty();
    }

    private Set<Integer> number(String units, String part, int from) {
        Set<Integer> wholes = new HashSet<>();
        if (!units.isEmpty()) {
            wholes.addAll(named(digits(units, from), whole));
            String bare = units.replaceFirst("^0+(?=\\d)", "");
            wholes.addAll(named(digits(bare, from), whole));
        }
        if (part.isEmpty()) {
            return wholes;
        }
        if (units.isEmpty() || units.equals("0")) {
            wholes.add(from);
        }
        Set<Integer> ends = new HashSet<>();
        for (int end : wholes) {
            for (String way : SignWords.fraction(part)) {
                words(way, end).ifPresent(ends::add);
            }
        }
        boolean cents = !hundredth.isEmpty() && part.length() == 2;
        if (cents && part.equals("00")) {
            ends.addAll(wholes);
        }
        for (int end : wholes) {
            words("point", end).ifPresent(behind -> ends.addAll(digits(part, behind)));
            if (cents) {
                ends.addAll(named(digits(part.replaceFirst("^0", ""), end), hundredth));
                words("and", end)
                        .ifPresent(behind ->
                                ends.addAll(named(digits(part.replaceFirst("^0", ""), behind), hundredth)));
            }
        }
        return ends;
    }

    /** The same ends, and those behind one of some names. */
    private Set<Integer> named(Set<Integer> ends, Set<String> names) {
        Set<Integer> all = new HashSet<>(ends);
        ends.stream()
                .filter(end -> end < said.size() && names.contains(said.get(end)))
                .forEach(end -> all.add(end + 1));
        return all;
    }

    /** Where these digits may end, grouped in any way. */
    private Set<Integer> digits(String digits, int from) {
        Set<Integer> ends = new HashSet<>();
        String left = digits;
        int at = from;
        while (!left.isEmpty()) {
            Optional<Said> next = SpokenNumbers.at(said, at);
            if (next.isEmpty() || !left.startsWith(next.get().digits())) {
                return ends;
            }
            left = left.substring(next.get().digits().length());
            at = next.get().end();
        }
        ends.add(at);
        return ends;
    }

    private Set<Integer> letters(String word, boolean alone, int from) {
        Set<Integer> ends = new HashSet<>();
        String lower = Typography.lower(word);
        words(lower, from).ifPresent(ends::add);
        words(String.join(" ", lower.split("")), from).ifPresent(ends::add);
        if (lower.equals("x")) {
            words("by", from).ifPresent(ends::add);
            words("times", from).ifPresent(ends::add);
        }
        if (lower.matches("st|nd|rd|th")) {
            ends.add(from);
        }
        if (Units.isSymbol(word)) {
            for (List<String> way :
                    Units.said(word, true).or(Units.said(word, false)).all()) {
                words(String.join(" ", way), from).ifPresent(ends::add);
            }
        }
        if (isUnknown(word) || (figures && !alone && word.length() <= LONGEST_ABBREVIATION && !Units.isSymbol(word))) {
            boolean consonants = figures || !VOWEL.matcher(word).find();
            if (consonants && from < said.size() && shortens(lower, said.get(from))) {
                ends.add(from + 1);
            }
            if (word.length() > 1 && initials(lower, from)) {
                ends.add(from + word.length());
            }
        }
        return ends;
    }

    /** Whether some letters are an abbreviation that no rule and no table of units knows. */
    private static boolean isUnknown(String letters) {
        return letters.length() > 1
                && letters.length() <= LONGEST_ABBREVIATION
                && letters.chars().allMatch(Character::isLetter)
                && (letters.equals(letters.toUpperCase(Locale.ROOT))
                        || !VOWEL.matcher(letters).find())
                && !Units.isSymbol(letters)
                && !AbbreviationRule.mayBe(Typography.lower(letters));
    }

    /** Whether a word begins with the first of some letters and has the others in their order, but is more than they. */
    private static boolean shortens(String letters, String word) {
        if (word.length() <= letters.length() || word.charAt(0) != letters.charAt(0) || !isFree(word)) {
            return false;
        }
        int next = 0;
        for (int i = 0; i < word.length() && next < letters.length(); i++) {
            next += word.charAt(i) == letters.charAt(next) ? 1 : 0;
        }
        return next == letters.length();
    }

    private boolean initials(String letters, int from) {
        if (from + letters.length() > said.size()) {
            return false;
        }
        for (int i = 0; i < letters.length(); i++) {
            if (said.get(from + i).length() < 2 || said.get(from + i).charAt(0) != letters.charAt(i)) {
                return false;
            }
        }
        return true;
    }
}
