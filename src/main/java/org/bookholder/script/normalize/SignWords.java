package org.bookholder.script.normalize;

import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** What may be said for a sign beside figures. From memory. */
final class SignWords {
    private static final Pattern FIGURE = Pattern.compile("[$£€]?\\.?\\d");

    private static final Map<String, List<String>> FRACTIONS = Map.of(
            "5", List.of("and a half", "half a", "half an", "half", "a half"),
            "25", List.of("and a quarter", "a quarter", "quarter", "a quarter of a"),
            "75", List.of("and three quarters", "three quarters"));

    /** Signs that nobody says. */
    private static final String SILENT = "()[]{}.,;!?\u201c\u201d\u2018\u2019\u2026$£€* ";

    /** What may be said for a sign; an empty one is silence. */
    private static final Map<Character, List<String>> SIGNS = Map.ofEntries(
            Map.entry('%', List.of("percent", "per cent")),
            Map.entry('/', List.of("", "over", "slash", "by", "out of")),
            Map.entry('-', List.of("", "to", "through", "dash", "hyphen")),
            Map.entry('\u2013', List.of("", "to", "through", "dash")),
            Map.entry(':', List.of("", "to", "colon")),
            Map.entry('#', List.of("number")),
            Map.entry('\u00b2', List.of("squared", "square")),
            Map.entry('\u00b3', List.of("cubed", "cubic")),
            Map.entry('@', List.of("at")),
            Map.entry('&', List.of("and")),
            Map.entry('=', List.of("equals", "is", "equal to")),
            Map.entry('+', List.of("plus")),
            Map.entry('\u00d7', List.of("by", "times", "")),
            Map.entry('~', List.of("about", "around", "approximately", "roughly")),
            Map.entry('\u2248', List.of("about", "around", "approximately", "roughly")),
            Map.entry('<', List.of("less than", "under", "below")),
            Map.entry('>', List.of("more than", "over", "above", "greater than")),
            Map.entry('\u00b1', List.of("plus or minus", "plus minus")),
            Map.entry('\u2212', List.of("minus", "negative")),
            Map.entry('\u00bd', FRACTIONS.get("5")),
            Map.entry('\u00bc', FRACTIONS.get("25")),
            Map.entry('\u00be', FRACTIONS.get("75")),
            Map.entry('\u00b0', List.of("", "degrees", "degree")),
            Map.entry('\u2032', List.of("", "minutes", "minute", "feet", "foot")),
            Map.entry('\u2033', List.of("", "seconds", "second", "inches", "inch")),
            Map.entry('\'', List.of("", "minutes", "minute", "feet", "foot")),
            Map.entry('"', List.of("", "seconds", "second", "inches", "inch")));

    private static final List<String> UNEQUAL =
            List.of("is not", "not equal to", "does not equal", "is not equal to", "not equals");

    private static final List<String> MINUS = List.of("minus", "negative");

    /** Signs that people name in ways of their own. */
    private static final String NAMED = "/-\u2013:#+\u00d7\u00b0\u2032\u2033'\"*";

    private SignWords() {}

    /** The ways to say the sign at a place of a text; an empty one is silence. None if it is a sign that has to be named freely. */
    static List<String> of(String written, int place) {
        char sign = written.charAt(place);
        boolean beforeNumber =
                FIGURE.matcher(written).region(place + 1, written.length()).lookingAt();
        boolean first = place == 0 || !Character.isLetterOrDigit(written.charAt(place - 1));
        if ((sign == '-' || sign == '\u2013') && beforeNumber && first) {
            return MINUS;
        }
        if (sign == '=' && place > 0 && written.charAt(place - 1) == '!') {
            return UNEQUAL;
        }
        if (sign == '#' && beforeNumber) {
            return List.of("", "number");
        }
        return SIGNS.getOrDefault(sign, SILENT.indexOf(sign) >= 0 ? List.of("") : List.of());
    }

    /** Whether people name a sign in ways of their own, or with a word or two that no list foresees. */
    static boolean isNamedFreely(char sign) {
        return NAMED.indexOf(sign) >= 0;
    }

    /** Other ways to say the digits behind a point: "and a half" for 5. */
    static List<String> fraction(String digits) {
        return FRACTIONS.getOrDefault(digits, List.of());
    }
}
