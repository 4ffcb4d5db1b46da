package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Parts of a second, as shutters have them: "1/250 s", "1/60 sec", "1/125 second", "1/125 shutter". */
final class ShutterRule implements NormalizationRule {
    private static final Pattern SHUTTER = Pattern.compile("1/(\\d{1,2}[05]|\\d{1,2}00|\\d000)(?:\\s?(?:s|sec|secs)"
            + END + "|(?=\\s(?:shutter|second)\\b)|(" + END + "))");

    /** Where a picture is spoken of, a part without a unit is one of a second. */
    private static final Pattern CAMERA = Pattern.compile("(?i)\\b(?:shutter|shoot|expos|camera|photo|lens)");

    private final NumberWords numbers;

    ShutterRule(NumberWords numbers) {
        this.numbers = numbers;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher m = NormalizationRule.match(SHUTTER, text, from, to);
        boolean bare = m != null && m.group(2) != null;
        if (m == null || (bare && !CAMERA.matcher(text).find())) {
            return null;
        }
        String digits = m.group(1);
        SpokenForms number = numbers.counted(digits).preferred().or(numbers.shortened(digits));
        SpokenForms part = numbers.ordinal(Integer.parseInt(digits)).preferred().or(numbers.shortOrdinal(digits));
        SpokenForms named =
                SpokenForms.of("one", NumberWords.article(part)).then(part).then(unit(text, m.end(1), m.end()));
        return new SpokenSpan(
                m.end(),
                named.or(SpokenForms.of("one over").then(number))
                        .or(SpokenForms.of("one").then(number)));
    }

    /** What may be said of the second: all of it where its symbol is written, only what is missing where the word follows. */
    private static SpokenForms unit(String text, int afterNumber, int end) {
        if (end > afterNumber) {
            return SpokenForms.of("of a second", "second");
        }
        return text.startsWith("second", end + 1)
                ? SpokenForms.of("", "of a")
                : SpokenForms.of("", "of a second", "second");
    }
}
