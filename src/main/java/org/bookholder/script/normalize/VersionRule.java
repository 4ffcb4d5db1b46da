package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Versions and addresses in the network: "v3.12.1", "1.2.3", "192.168.1.1", "v2.0", "version 2.0". */
final class VersionRule implements NormalizationRule {
    private static final Pattern PARTS = Pattern.compile("([vV]?)(\\d{1,4}(?:\\.\\d{1,4}){2,3})(?:/(\\d{1,2}))?" + END);
    private static final Pattern WITHIN = Pattern.compile("\\d{1,4}(?:\\.\\d{1,4}){2,3}(?![.\\d])");
    private static final Pattern SHORT = Pattern.compile("([vV])(\\d{1,4}(?:\\.\\d{1,4})?)" + END);
    private static final Pattern ROUND = Pattern.compile("(\\d{1,4})\\.0" + END);
    private static final Pattern BEFORE = Pattern.compile("(?i)\\b(?:version|release|update|v|ver\\.?)\\s$");
    private static final Pattern NUMBERS = Pattern.compile("[vV]?\\d{1,4}\\.");

    private final NumberWords numbers;

    VersionRule(NumberWords numbers) {
        this.numbers = numbers;
    }

    @Override
    public boolean mayBegin(char first) {
        return first == 'v' || first == 'V' || (first >= '0' && first <= '9');
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        if (NormalizationRule.match(NUMBERS, text, from, to) == null && text.charAt(from) != 'v') {
            return null;
        }
        Matcher m = NormalizationRule.match(PARTS, text, from, to);
        if (m != null) {
            return new SpokenSpan(
                    m.end(), withMask(named(m.group(1), parts(m.group(2).split("\\.", -1))), m.group(3)));
        }
        m = NormalizationRule.match(SHORT, text, from, to);
        if (m != null) {
            return new SpokenSpan(m.end(), named(m.group(1), rounded(m.group(2))));
        }
        m = NormalizationRule.match(ROUND, text, from, to);
        boolean version = m != null
                && BEFORE.matcher(text.substring(Math.max(0, from - 12), from)).find();
        return m == null || !version ? null : new SpokenSpan(m.end(), rounded(m.group(1) + ".0"));
    }

    /** Reads a version or an address within a written word, whatever follows; null if there is none. */
    @Nullable SpokenSpan partsAt(String chunk, int at) {
        Matcher m = NormalizationRule.match(WITHIN, chunk, at, chunk.length());
        return m == null
                ? null
                : new SpokenSpan(m.end(), parts(m.group().split("\\.", -1)).first(12));
    }

    /** "10.0.0.0/24": a part of a network. */
    private SpokenForms withMask(SpokenForms forms, @Nullable String mask) {
        return mask == null
                ? forms
                : forms.first(16).then("slash").then(numbers.counted(mask).preferred());
    }

    /** A version with a round number, whose ".0" may be left out. */
    private SpokenForms rounded(String number) {
        SpokenForms forms = numbers.written(number).first(4);
        return number.endsWith(".0")
                ? forms.or(numbers.written(number.substring(0, number.length() - 2))
                        .preferred())
                : forms;
    }

    private static SpokenForms named(String letter, SpokenForms number) {
        return letter.isEmpty() ? number : SpokenForms.of("version", "v").then(number);
    }

    private static SpokenForms withZero(SpokenForms forms, String written, String said) {
        return new SpokenForms(forms.all().stream()
                .map(form -> form.stream()
                        .map(word -> word.equals(written) ? said : word)
                        .toList())
                .toList());
    }

    private SpokenForms parts(String[] parts) {
        SpokenForms forms = SpokenForms.NONE;
        for (String between : new String[] {"point", "dot", ""}) {
            SpokenForms whole = SpokenForms.SILENT;
            SpokenForms short3 = SpokenForms.SILENT;
            SpokenForms digits = SpokenForms.SILENT;
            for (int i = 0; i < parts.length; i++) {
                String join = i == 0 ? "" : between;
                whole = whole.then(join).then(numbers.counted(parts[i]).preferred());
                short3 = short3.then(join).then(numbers.shortened(parts[i]));
                digits = digits.then(join).then(numbers.digits(parts[i]).preferred());
            }
            forms = forms.or(whole).or(short3).or(digits);
        }
        return forms.or(withZero(forms, "zero", "oh")).or(withZero(forms, "oh", "zero"));
    }
}
