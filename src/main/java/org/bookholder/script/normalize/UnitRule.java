package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The symbol of a unit behind a number in words: "two mph", "half a kg". */
final class UnitRule implements NormalizationRule {
    private static final Pattern UNIT = Pattern.compile("(?=\\S{2})" + Units.COMPOUND + END);

    private static final Pattern COUNT =
            Pattern.compile("(?i)\\b(?:(one|an?)|two|three|four|five|six|seven|eight|nine|ten"
                    + "|eleven|twelve|\\p{L}{3,5}teen|(?:twen|thir|for|fif|six|seven|eigh|nine)ty(?:-\\p{L}+)?|hundred|thousand|million"
                    + "|few|several|many|half|quarters?)\\s$");

    @Override
    public boolean mayBegin(char first) {
        return Character.isLetter(first);
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher count = COUNT.matcher(text.substring(Math.max(0, from - 20), from));
        Matcher unit = count.find() ? NormalizationRule.match(UNIT, text, from, to) : null;
        if (unit == null) {
            return null;
        }
        SpokenForms said = Units.compound(unit, 1, count.group(1) != null);
        return new SpokenSpan(unit.end(), said.or(LetterForms.of(unit.group().replaceAll("\\W", ""))));
    }
}
