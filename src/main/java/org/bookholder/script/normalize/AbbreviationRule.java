package org.bookholder.script.normalize;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Abbreviations: "Dr.", "e.g.", "vs", "U.S.", "w/o", "Paris, TX". */
final class AbbreviationRule implements NormalizationRule {
    private static final Pattern BEHIND_ORDINAL = Pattern.compile("\\d(?:st|nd|rd|th)\\s$");

    /** "St.", a saint or a street. */
    private static final String SAINT = "st";

    /** "Dr.", a doctor or a drive. */
    private static final String DOCTOR = "dr";

    private static final Pattern WORD = Pattern.compile("([A-Za-z]{1,8}(?:\\.[A-Za-z]{1,3}){0,4})(\\.?)" + END);
    private static final Pattern ROMAN = Pattern.compile("[IVX]{1,6}\\b");
    private static final Pattern WITH_SLASH = Pattern.compile("(w/o|w/|b/c|c/o)(?=\\s|$)");
    private static final Pattern DOTTED_LETTERS = Pattern.compile("((?:[A-Za-z]\\.){2,6}[A-Za-z]?)('?s)?(?![A-Za-z])");

    /** Whether a word in small letters may be an abbreviation, with a full stop behind it or without. */
    static boolean mayBe(String word) {
        return Abbreviations.ALWAYS.containsKey(word)
                || Abbreviations.DOTTED.containsKey(word)
                || Abbreviations.BEFORE_NUMBER.containsKey(word)
                || Abbreviations.CUT.containsKey(word)
                || Abbreviations.UNDOTTED.containsKey(word)
                || word.equals(SAINT)
                || word.equals(DOCTOR);
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher slash = NormalizationRule.match(WITH_SLASH, text, from, to);
        if (slash != null) {
            return new SpokenSpan(
                    slash.end(),
                    SpokenForms.of(Abbreviations.ALWAYS.getOrDefault(slash.group(1), new String[] {"with"})));
        }
        Matcher word = NormalizationRule.match(WORD, text, from, to);
        if (word != null) {
            SpokenForms named = named(word, text, from);
            SpokenForms forms = named.isEmpty() ? word(word, text, to) : named;
            if (!forms.isEmpty()) {
                return new SpokenSpan(word.end(), forms);
            }
        }
        Matcher dotted = NormalizationRule.match(DOTTED_LETTERS, text, from, to);
        return dotted == null || !NormalizationRule.endsAt(text, dotted.end())
                ? null
                : new SpokenSpan(dotted.end(), dottedLetters(dotted));
    }

    /** States behind a place, and weekdays and months without a full stop, which may be other words as well. */
    private static SpokenForms named(Matcher word, String text, int from) {
        String letters = word.group(1);
        SpokenForms state = Places.state(text, from, letters);
        if (!state.isEmpty()) {
            return LetterForms.of(letters).or(state);
        }
        String full = word.group(2).isEmpty() ? NamedRangeRule.shortened(letters) : "";
        if (full.isEmpty()) {
            return SpokenForms.NONE;
        }
        int next = word.end() + 1;
        boolean number = next < text.length() && Character.isDigit(text.charAt(next));
        SpokenForms said = SpokenForms.of(full);
        return number
                ? said.or(LetterForms.of(letters))
                : LetterForms.of(letters).or(said);
    }

    /** Reads initials such as "U.S.", whatever follows them. */
    static @Nullable SpokenSpan dottedLettersAt(String text, int from, int to) {
        Matcher dotted = NormalizationRule.match(DOTTED_LETTERS, text, from, to);
        return dotted == null ? null : new SpokenSpan(dotted.end(), dottedLetters(dotted));
    }

    private static SpokenForms dottedLetters(Matcher m) {
        String letters = m.group(1).replace(".", "");
        String suffix = m.group(2) == null ? "" : m.group(2);
        SpokenForms forms = SpokenForms.of(LetterForms.spell(letters) + suffix);
        if (letters.length() > 2) {
            forms = forms.or(Typography.lower(letters) + suffix);
        }
        return suffix.equals("s")
                ? SpokenForms.of(LetterForms.spell(letters) + "'s").or(forms)
                : forms;
    }

    private static SpokenForms word(Matcher m, String text, int to) {
        String rest = text.substring(m.start(), to);
        boolean behindOrdinal = BEHIND_ORDINAL
                .matcher(text.substring(Math.max(0, m.start() - 6), m.start()))
                .find();
        String key = Typography.lower(m.group(1));
        boolean dot = !m.group(2).isEmpty();
        int next = m.end() - m.start() + 1;
        boolean capital = next < rest.length() && Character.isUpperCase(rest.charAt(next));
        if (dot && key.equals(SAINT)) {
            return capital ? SpokenForms.of("saint", "street") : SpokenForms.of("street", "saint");
        }
        if (dot && key.equals(DOCTOR)) {
            return capital ? SpokenForms.of("doctor", "drive") : SpokenForms.of("drive", "doctor");
        }
        String[] said = dot && behindOrdinal ? Abbreviations.CENTURY.get(key) : null;
        said = said == null ? Abbreviations.ALWAYS.get(key) : said;
        if (said == null && dot) {
            said = Abbreviations.DOTTED.get(key);
        }
        if (said == null && dot && Abbreviations.BEFORE_NUMBER.containsKey(key) && isNumber(rest, next)) {
            said = Abbreviations.BEFORE_NUMBER.get(key);
        }
        if (said == null) {
            return cut(key, dot, capital || next >= rest.length());
        }
        SpokenForms forms = SpokenForms.of(said);
        boolean small = Character.isLowerCase(m.group(1).charAt(0));
        if (dot && m.group(1).length() > 1 && m.group(1).equals(m.group(1).toUpperCase(Locale.ROOT))) {
            SpokenForms letters = LetterForms.of(m.group(1));
            // "HR." at the end of a sentence is no hour
            forms = Initials.of(m.group(1)).isEmpty() ? forms.or(letters) : letters.or(forms);
            return forms.or(Formulae.named(m.group(1)));
        }
        return !Abbreviations.WORDS.contains(key)
                ? forms
                : small ? SpokenForms.of(key).or(forms) : forms.or(key);
    }

    /** A word that is cut short; at the end of a sentence it is more likely a word by itself, as in "We all sing.". */
    private static SpokenForms cut(String key, boolean dot, boolean sentenceEnds) {
        String[] full = dot ? Abbreviations.CUT.get(key) : Abbreviations.UNDOTTED.get(key);
        if (full == null) {
            return SpokenForms.NONE;
        }
        SpokenForms word = LetterForms.of(key).preferred();
        boolean hasVowel = key.matches(".*[aeiou].*");
        return hasVowel && (!dot || sentenceEnds)
                ? word.or(full)
                : SpokenForms.of(full).or(word);
    }

    private static boolean isNumber(String rest, int at) {
        return at < rest.length()
                && (Character.isDigit(rest.charAt(at))
                        || NormalizationRule.match(ROMAN, rest, at, rest.length()) != null);
    }
}
