package org.bookholder.script.normalize;

import java.text.Normalizer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Powers: "10⁶", "x⁴", "2^8", and those of a unit, "10⁻⁴ m". */
final class Powers implements NormalizationRule {
    private static final NumberWords NUMBERS = new NumberWords();
    private static final String RAISED = "[\u2070\u00b9\u00b2\u00b3\u2074-\u2079]";
    private static final Pattern CARET = Pattern.compile("\\^\\(?([-\u2212]?)(\\d{1,3})\\)?");

    private static final Pattern POWER = Pattern.compile("(\u207b?)(" + RAISED + "{1,2})(?!" + RAISED + ")");

    /** A raised one, which is the mark of a note. */
    private static final Pattern NOTE = Pattern.compile("\u00b9(?!" + RAISED + ")");

    /** What is raised to a power; behind longer words and numbers a raised number is the mark of a note. */
    private static final Pattern BASE = Pattern.compile("(?:^|[^\\p{L}\\d]|\\dx)(?:\\p{L}|\\d{1,2})$");

    private static final Pattern WITH_UNIT =
            Pattern.compile("(\\d{1,2})(\u207b?)(" + RAISED + "{1,2})\\s" + Units.COMPOUND + END);

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher m = NormalizationRule.match(WITH_UNIT, text, from, to);
        if (m == null) {
            return null;
        }
        SpokenForms unit = Units.compound(m, 4, false).first(4);
        return new SpokenSpan(
                m.end(),
                NUMBERS.counted(m.group(1))
                        .preferred()
                        .then(of(m.group(2), exponent(m.group(3))))
                        .then(unit));
    }

    /** The power that stands at {@code at} behind its base; null if there is none. */
    static @Nullable SpokenSpan at(String chunk, int at) {
        Matcher power = NormalizationRule.match(POWER, chunk, at, chunk.length());
        boolean note = NormalizationRule.match(NOTE, chunk, at, chunk.length()) != null;
        if (power == null || note || !BASE.matcher(chunk.substring(0, at)).find()) {
            power = at == 0 ? null : NormalizationRule.match(CARET, chunk, at, chunk.length());
        }
        return power == null ? null : new SpokenSpan(power.end(), of(power.group(1), exponent(power.group(2))));
    }

    private static int exponent(String raised) {
        return Integer.parseInt(Normalizer.normalize(raised, Normalizer.Form.NFKC));
    }

    /**
     * How a power is said behind its base.
     *
     * @param minus empty if the exponent is positive
     */
    static SpokenForms of(String minus, int exponent) {
        SpokenForms number = NUMBERS.cardinal(exponent).preferred();
        SpokenForms ordinal = NUMBERS.ordinal(exponent).preferred();
        if (!minus.isEmpty()) {
            SpokenForms sign = SpokenForms.of("minus", "negative");
            SpokenForms forms = sign.then(number)
                    .or(sign.then(ordinal))
                    .or(SpokenForms.of("power of").then(sign).then(number));
            return SpokenForms.of("to the").then(forms.or(sign.then(ordinal).then("power")));
        }
        SpokenForms forms = SpokenForms.of("to the")
                .then(ordinal.then("", "power")
                        .or(SpokenForms.of("power of", "").then(number)));
        return exponent == 2 || exponent == 3
                ? SpokenForms.of(exponent == 2 ? "squared" : "cubed").or(forms)
                : forms;
    }
}
