package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What stands in square brackets and is read: keys, "[Ctrl]+[C]", intervals, "[0, 1)", and a changed letter, "[T]he". */
final class BracketRule implements NormalizationRule {
    private static final Pattern KEYS =
            Pattern.compile("([^\\[\\]\\s]{1,12})\\]((?:\\s?\\+\\s?\\[[^\\[\\]\\s]{1,12}\\]){0,4})" + END);
    private static final String LIMIT = "([-+\u2212]?(?:\\d{1,9}(?:\\.\\d{1,6})?|\\p{L}|\u221e))";
    private static final Pattern INTERVAL = Pattern.compile(LIMIT + ",\\s?" + LIMIT + "[\\])]" + END);
    private static final Pattern CHANGED = Pattern.compile("(\\p{L}{1,9})\\](\\p{L}{1,30})" + END);

    private final NumberWords numbers;
    private final ShortcutRule shortcuts;

    BracketRule(NumberWords numbers, ShortcutRule shortcuts) {
        this.numbers = numbers;
        this.shortcuts = shortcuts;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        if (from == 0 || text.charAt(from - 1) != '[') {
            return null;
        }
        Matcher interval = NormalizationRule.match(INTERVAL, text, from, to);
        if (interval != null) {
            return new SpokenSpan(
                    interval.end(),
                    limit(interval.group(1))
                            .then("to", "", "comma", "and", "through")
                            .then(limit(interval.group(2)))
                            .or(SpokenForms.of("from")
                                    .then(limit(interval.group(1)).preferred())
                                    .then("to")
                                    .then(limit(interval.group(2)).preferred())));
        }
        Matcher changed = NormalizationRule.match(CHANGED, text, from, to);
        if (changed != null) {
            return new SpokenSpan(changed.end(), LetterForms.of(changed.group(1) + changed.group(2)));
        }
        Matcher keys = NormalizationRule.match(KEYS, text, from, to);
        return keys == null ? null : keys(keys);
    }

    private @Nullable SpokenSpan keys(Matcher keys) {
        String pressed = keys.group(1) + keys.group(2).replaceAll("[\\[\\]\\s]", "");
        if (keys.group(2).isEmpty()) {
            String name = ShortcutRule.name(pressed);
            return name == null
                    ? null
                    : new SpokenSpan(keys.end(), SpokenForms.of(name).or(LetterForms.of(pressed)));
        }
        SpokenSpan together = shortcuts.at(pressed, 0, pressed.length());
        return together == null ? null : new SpokenSpan(keys.end(), together.forms());
    }

    private SpokenForms limit(String written) {
        String bare = written.replaceAll("^[-+\u2212]", "");
        SpokenForms sign = written.equals(bare)
                ? SpokenForms.SILENT
                : written.charAt(0) == '+' ? SpokenForms.of("plus", "") : SpokenForms.of("minus", "negative");
        SpokenForms value = Character.isDigit(bare.charAt(0))
                ? numbers.counted(bare)
                : Character.isLetter(bare.charAt(0)) ? LetterForms.of(bare).preferred() : Symbols.of(bare);
        return sign.then(value);
    }
}
