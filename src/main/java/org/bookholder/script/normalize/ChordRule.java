package org.bookholder.script.normalize;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Chords and steps of the scale: "F#m", "Cmaj7", "Bb", "D7sus4", "G/B", "I\u2013IV\u2013V". What is said of them is from memory. */
final class ChordRule implements NormalizationRule {
    private static final String STEP = "(?:VII|VI|IV|V|III|II|I|vii|vi|iv|v|iii|ii|i)(?:[°o]?7?)";
    private static final Pattern STEPS =
            Pattern.compile("(?=\\S*[IiVv]{2}|[IV][-\u2013][IV])(" + STEP + "(?:[-\u2013]" + STEP + "){1,7})" + END);
    private static final Pattern RANGE = Pattern.compile("[IV]{1,3}[-\u2013][IV]{1,3}");
    private static final Pattern MUSIC = Pattern.compile(
            "(?i)\\b(?:chords?|progressions?|scales?|keys?|major|minor|cadences?|harmony|harmonies|tonic|dominant|triads?"
                    + "|turnarounds?|blues|jazz|songs?|music|vamps?|play(?:s|ed|ing)?|resolves?)\\b");

    /** Behind current and voltage, as the two letters. */
    private static final Pattern CURVE = Pattern.compile("\\s(?:curve|characteristic|plot|graph)");

    private static final Pattern CHORD =
            Pattern.compile("([A-G])([#\u266f]|b(?![a-z])|\u266d)?(maj|min|m|dim|aug|sus|add|M(?=7))?(\\d{1,2})?"
                    + "((?:sus|add|maj|[b#])\\d{1,2}){0,2}(?:/([A-G][#b\u266f\u266d]?))?" + END);
    private static final Pattern PART = Pattern.compile("(sus|add|maj|[b#])(\\d{1,2})");
    private static final Pattern STEP_ONE = Pattern.compile("([IVXivx]+)([°o]?)(7?)");
    private static final Map<String, SpokenForms> QUALITIES = Map.of(
            "maj", SpokenForms.of("major", "maj"),
            "M", SpokenForms.of("major"),
            "min", SpokenForms.of("minor", "min"),
            "m", SpokenForms.of("minor", "m"),
            "dim", SpokenForms.of("diminished", "dim"),
            "aug", SpokenForms.of("augmented", "aug"));
    private static final Map<String, Integer> STEP_VALUES =
            Map.of("I", 1, "II", 2, "III", 3, "IV", 4, "V", 5, "VI", 6, "VII", 7);

    private final NumberWords numbers;

    ChordRule(NumberWords numbers) {
        this.numbers = numbers;
    }

    @Override
    public boolean mayBegin(char first) {
        return (first >= 'A' && first <= 'G') || "IViv".indexOf(first) >= 0;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher steps = NormalizationRule.match(STEPS, text, from, to);
        if (steps != null) {
            return new SpokenSpan(steps.end(), steps(steps.group(1), text, steps.end()));
        }
        Matcher chord = NormalizationRule.match(CHORD, text, from, to);
        return chord == null || isLetterAndNumber(chord) ? null : new SpokenSpan(chord.end(), chord(chord));
    }

    /** "B12" or "A/C" may be anything. */
    private static boolean isLetterAndNumber(Matcher m) {
        String bass = m.group(6);
        boolean plain = m.group(2) == null && m.group(3) == null && m.group(5) == null;
        return plain && (bass == null || bass.length() == 1);
    }

    /** Chords one after the other; two capital numerals are a range unless music is near. */
    private SpokenForms steps(String written, String text, int end) {
        SpokenForms none = SpokenForms.SILENT;
        SpokenForms to = SpokenForms.NONE;
        SpokenForms letters = SpokenForms.SILENT;
        for (String step : written.split("[-\u2013]", -1)) {
            Matcher m = STEP_ONE.matcher(step);
            int value = m.matches() ? STEP_VALUES.getOrDefault(m.group(1).toUpperCase(Locale.ROOT), 0) : 0;
            SpokenForms said = numbers.cardinal(value).preferred();
            said = m.group(2).isEmpty() ? said : said.then("diminished");
            said = m.group(3).isEmpty() ? said : said.then("seven");
            to = to.isEmpty() ? said : to.then("to", "through").then(said);
            none = none.then(said);
            letters = letters.then(LetterForms.spell(m.group(1)));
        }
        if (!RANGE.matcher(written).matches() || MUSIC.matcher(text).find()) {
            return none.or(to).or(letters);
        }
        return NormalizationRule.match(CURVE, text, end, text.length()) != null
                ? letters.or(to).or(none)
                : to.or(none).or(letters);
    }

    private SpokenForms chord(Matcher m) {
        String root = Typography.lower(m.group(1));
        SpokenForms forms = note(m.group(1), m.group(2));
        forms = m.group(3) == null ? forms : forms.then(quality(m.group(3), m.group(4)));
        boolean named =
                m.group(3) != null && (m.group(3).equals("sus") || m.group(3).equals("add"));
        if (m.group(4) != null && !named) {
            forms = forms.then(number(m.group(4)));
        }
        Matcher part = PART.matcher(m.group());
        for (int at = m.end(4) < 0 ? m.end(3) < 0 ? m.start() + root.length() : m.end(3) : m.end(4);
                m.group(5) != null && part.find(Math.max(0, at - m.start()));
                at = m.start() + part.end()) {
            forms = forms.then(part(part.group(1), part.group(2)));
        }
        if (m.group(6) != null) {
            String bass = m.group(6);
            SpokenForms low = note(bass.substring(0, 1), bass.length() > 1 ? bass.substring(1) : null)
                    .first(1);
            forms = forms.first(10).then("over", "slash", "on").then(low);
        }
        String letters = m.group().replaceAll("[^A-Za-z]", "");
        if (!letters.equals(m.group())) {
            return forms;
        }
        SpokenForms word = LetterForms.of(letters);
        return letters.equals("Am") || letters.equals("Em") ? word.or(forms) : forms.or(word);
    }

    private static SpokenForms note(String letter, @Nullable String sign) {
        String root = Typography.lower(letter);
        return sign == null
                ? SpokenForms.of(root)
                : "#\u266f".contains(sign)
                        ? SpokenForms.of(root + " sharp", root + " hash")
                        : SpokenForms.of(root + " flat");
    }

    private SpokenForms quality(String written, @Nullable String number) {
        return written.equals("sus") || written.equals("add")
                ? part(written, number == null ? "4" : number)
                        .or(number == null ? SpokenForms.of(written) : SpokenForms.NONE)
                : QUALITIES.getOrDefault(written, SpokenForms.SILENT);
    }

    /** "Seven", "seventh". */
    private SpokenForms number(String digits) {
        int n = Integer.parseInt(digits);
        return numbers.cardinal(n).preferred().or(numbers.ordinal(n).preferred());
    }

    private SpokenForms part(String kind, String digits) {
        SpokenForms number = number(digits);
        return switch (kind) {
            case "sus" -> SpokenForms.of("sus", "suspended").then(number);
            case "add" -> SpokenForms.of("add", "added").then(number);
            case "maj" -> SpokenForms.of("major", "maj").then(number);
            case "#" -> SpokenForms.of("sharp").then(number);
            default -> SpokenForms.of("flat").then(number);
        };
    }
}
