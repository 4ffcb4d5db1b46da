package org.bookholder.script.normalize;

import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Roman numerals: "Chapter IV", "Louis XIV", "World War II", and "II." before an item of a list. */
final class RomanRule implements NormalizationRule {
    /** What is counted by Roman numerals, in small letters. */
    private static final Set<String> COUNTED = Set.of(
            "chapter",
            "part",
            "section",
            "volume",
            "book",
            "act",
            "scene",
            "appendix",
            "phase",
            "type",
            "level",
            "figure",
            "table",
            "war",
            "grade",
            "stage",
            "class",
            "mark",
            "lesson",
            "vol",
            "ch",
            "pt",
            "fig",
            "sec",
            "art",
            "no",
            "bk",
            "step",
            "item",
            "exercise",
            "round",
            "group",
            "title",
            "article",
            "unit",
            "module");

    private static final Pattern ROMAN = Pattern.compile(
            "(?=[MDCLXVI])(?:M{0,3})(?:CM|CD|D?C{0,3})(?:XC|XL|L?X{0,3})(?:IX|IV|V?I{0,3})(?![A-Za-z'])" + END);

    /** Kings, queens and popes are counted by these single letters, too; common practice. */
    private static final Set<String> REGNAL = Set.of(
            "alexander",
            "charles",
            "edward",
            "elizabeth",
            "francis",
            "frederick",
            "george",
            "henry",
            "james",
            "john",
            "louis",
            "mary",
            "napoleon",
            "nicholas",
            "paul",
            "peter",
            "philip",
            "pius",
            "ramesses",
            "richard",
            "wilhelm",
            "william");

    private static final Pattern LISTED = Pattern.compile("([IVX]{1,5})\\.(?=\\s\\p{Lu})");

    /** Several letters that are not initials such as "CD" or "DC" and not "MIX". */
    private static final Pattern ROMAN_AND_NO_WORD =
            Pattern.compile("(?!(?:MIX|DIM|CV|MD|CD|DC|DI|MC|MM|DM|DL|CC|CM|XL|XXL|LX|MI|DIV|MIL)$)[IVXLCDM]{2,12}");

    private final NumberWords numbers;

    RomanRule(NumberWords numbers) {
        this.numbers = numbers;
    }

    @Override
    public boolean mayBegin(char first) {
        return "IVXLCDM".indexOf(first) >= 0;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher roman = NormalizationRule.match(ROMAN, text, from, to);
        if (roman != null && !roman.group().isEmpty()) {
            SpokenForms forms = roman(roman.group(), wordBefore(text, from));
            if (!forms.isEmpty()) {
                return new SpokenSpan(roman.end(), forms);
            }
        }
        Matcher listed = from == 0 ? NormalizationRule.match(LISTED, text, from, to) : null;
        if (listed == null) {
            return null;
        }
        SpokenForms number = numbers.cardinal(value(listed.group(1))).preferred();
        return new SpokenSpan(
                listed.end(), SpokenForms.of(LetterForms.spell(listed.group(1))).or(number));
    }

    private SpokenForms roman(String numeral, String before) {
        boolean counted = COUNTED.contains(Typography.lower(before));
        boolean regnal = REGNAL.contains(Typography.lower(before));
        boolean capital = !before.isEmpty() && Character.isUpperCase(before.charAt(0));
        boolean named = capital && ROMAN_AND_NO_WORD.matcher(numeral).matches();
        if (!counted && !named && !regnal) {
            return SpokenForms.NONE;
        }
        int value = value(numeral);
        SpokenForms ordinal = SpokenForms.of("the").then(numbers.ordinal(value).preferred());
        SpokenForms cardinal = numbers.cardinal(value).preferred();
        if (value > 999) {
            return numbers.year(value).or(cardinal).or(LetterForms.spell(numeral));
        }
        if (numeral.equals("I") && !counted) {
            return SpokenForms.of("i").or(ordinal).or(cardinal);
        }
        return (counted ? cardinal.or(ordinal) : ordinal.or(cardinal)).or(LetterForms.spell(numeral));
    }

    private static int value(String numeral) {
        int value = 0;
        for (int i = 0; i < numeral.length(); i++) {
            int digit = digit(numeral.charAt(i));
            value += i + 1 < numeral.length() && digit(numeral.charAt(i + 1)) > digit ? -digit : digit;
        }
        return value;
    }

    private static int digit(char c) {
        return List.of(1, 5, 10, 50, 100, 500, 1000).get("IVXLCDM".indexOf(c));
    }

    private static String wordBefore(String text, int from) {
        int end = from;
        while (end > 0 && (text.charAt(end - 1) == ' ' || (end < from && text.charAt(end - 1) == '.'))) {
            end--;
        }
        int start = end;
        while (start > 0 && Character.isLetter(text.charAt(start - 1))) {
            start--;
        }
        return text.substring(start, end);
    }
}
