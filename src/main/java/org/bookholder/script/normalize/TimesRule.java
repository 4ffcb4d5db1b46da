package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** How many times: "2x", "15 min x 4", "chorus \u00d72"; and boards by their sides: "2x4s". */
final class TimesRule implements NormalizationRule {
    private static final Pattern BEHIND = Pattern.compile("[x\u00d7]\\s?(\\d{1,3})" + END);
    private static final Pattern BEFORE = Pattern.compile("(" + NUMBER + ")[x\u00d7]" + END);
    private static final Pattern BOARDS = Pattern.compile("(\\d)[x\u00d7](\\d{1,2})s" + END);

    private final NumberWords numbers;

    TimesRule(NumberWords numbers) {
        this.numbers = numbers;
    }

    @Override
    public boolean mayBegin(char first) {
        return first == 'x' || first == '\u00d7';
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher boards = NormalizationRule.match(BOARDS, text, from, to);
        if (boards != null) {
            SpokenForms thick = numbers.counted(boards.group(1)).preferred();
            String wide = String.join(" ", numbers.counted(boards.group(2)).first());
            return new SpokenSpan(boards.end(), thick.then("by").then(wide.endsWith("x") ? wide + "es" : wide + "s"));
        }
        Matcher before = NormalizationRule.match(BEFORE, text, from, to);
        if (before != null) {
            return new SpokenSpan(before.end(), before(before.group(1)));
        }
        Matcher behind = NormalizationRule.match(BEHIND, text, from, to);
        return behind == null ? null : new SpokenSpan(behind.end(), behind(behind.group(1)));
    }

    /** "2x": so many times, as the author of "2x faster" means it. */
    private SpokenForms before(String number) {
        SpokenForms forms = numbers.counted(number).first(4).then("x", "times");
        SpokenForms behind =
                SpokenForms.of("times").then(numbers.counted(number).preferred());
        return number.equals("2")
                ? forms.or("twice", "twice as", "double").or(behind)
                : forms.or(numbers.counted(number).preferred().then("times as")).or(behind);
    }

    private SpokenForms behind(String digits) {
        SpokenForms number = numbers.counted(digits).preferred();
        SpokenForms forms = SpokenForms.of("times", "x", "by").then(number).or(number.then("times"));
        return switch (digits) {
            case "1" -> forms.or("once");
            case "2" -> forms.or("twice");
            default -> forms;
        };
    }
}
