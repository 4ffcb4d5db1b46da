package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Numbers on their own: "1,500", "2019", "21st", "the '80s", "#1", "No. 5", "-3", "10k", "555-0123". */
final class NumberRule implements NormalizationRule {
    private static final Pattern PHONE =
            Pattern.compile("(?:\\+?\\d{1,3}[\\s.-])?\\(?\\d{3}\\)?[\\s.-]\\d{3}[.-]\\d{4}(?!\\d)" + END
                    + "|\\d{3}-\\d{4}(?!\\d)" + END + "|0\\d{2,4}\\s\\d{3,4}\\s\\d{3,4}(?!\\d)" + END);
    private static final Pattern ROUND_GROUP = Pattern.compile("\\b[1-9]00\\b");
    private static final Pattern ROUND = Pattern.compile("\\d{2}0-\\d{3}0");
    private static final Pattern MARKED = Pattern.compile("#(" + NUMBER + ")" + END);
    private static final Pattern NUMBERED = Pattern.compile("(?:[Nn]o|[Nn]r|[Nn]um)\\.\\s?(" + NUMBER + ")" + END);
    private static final Pattern SIGNED = Pattern.compile("([-+\\u00b1~\\u2248<>])(" + NUMBER + ")(%?)" + END);
    private static final Pattern DECADE = Pattern.compile("'?(\\d{1,3}0)'?s\\b");
    private static final Pattern ORDINAL =
            Pattern.compile("(\\d{1,3}(?:,\\d{3}){1,4}|\\d{1,12})(?:st|nd|rd|th|ST|ND|RD|TH)\\b");
    private static final Pattern SHORT = Pattern.compile("(" + NUMBER + ")(k|K|M|bn|B)" + END);
    private static final Pattern ALONE = Pattern.compile("(" + NUMBER + ")" + END);

    private static final Pattern ENDS = Pattern.compile(END);

    private final NumberWords numbers;
    private final ScaleRule scales;

    NumberRule(NumberWords numbers, ScaleRule scales) {
        this.numbers = numbers;
        this.scales = scales;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher m = NormalizationRule.match(MARKED, text, from, to);
        if (m != null) {
            return new SpokenSpan(m.end(), SpokenForms.of("number").then(numbers.written(m.group(1))));
        }
        m = NormalizationRule.match(NUMBERED, text, from, to);
        if (m != null) {
            return new SpokenSpan(m.end(), SpokenForms.of("number").then(numbers.written(m.group(1))));
        }
        m = NormalizationRule.match(SIGNED, text, from, to);
        if (m != null) {
            SpokenForms forms = sign(m.group(1)).then(numbers.counted(m.group(2)));
            return new SpokenSpan(m.end(), m.group(3).isEmpty() ? forms : forms.then("percent"));
        }
        m = NormalizationRule.match(SHORT, text, from, to);
        if (m != null) {
            String letter = m.group(2);
            String word = letter.equalsIgnoreCase("k") ? "thousand" : letter.equals("M") ? "million" : "billion";
            String spelled = letter.length() == 1 ? Typography.lower(letter) : "b n";
            SpokenForms forms = numbers.counted(m.group(1)).then(spelled, word);
            forms = forms.or(scales.scaled(m.group(1), word));
            return new SpokenSpan(
                    m.end(),
                    letter.equals("K")
                            ? forms.or(numbers.counted(m.group(1)).first(4).then("kelvin"))
                            : forms);
        }
        m = NormalizationRule.match(ALONE, text, from, to);
        return m == null
                ? decadeOrOrdinalAt(text, from, to, true)
                : new SpokenSpan(m.end(), numbers.written(m.group(1)));
    }

    /** Reads telephone numbers and decades such as "1980s", which other rules would take for a range or for seconds. */
    @Nullable SpokenSpan first(String text, int from, int to) {
        Matcher m = NormalizationRule.match(PHONE, text, from, to);
        if (m != null && !ROUND.matcher(m.group()).matches()) {
            return new SpokenSpan(m.end(), phone(m.group()));
        }
        m = NormalizationRule.match(DECADE, text, from, to);
        return m != null && ends(text, m.end(), to, true) ? new SpokenSpan(m.end(), decade(m.group(1))) : null;
    }

    /** Reads "1980s" or "21st"; if {@code whole} is false, anything may follow. */
    @Nullable SpokenSpan decadeOrOrdinalAt(String text, int from, int to, boolean whole) {
        Matcher m = NormalizationRule.match(DECADE, text, from, to);
        if (m != null && ends(text, m.end(), to, whole)) {
            return new SpokenSpan(m.end(), decade(m.group(1)));
        }
        m = NormalizationRule.match(ORDINAL, text, from, to);
        if (m == null || !ends(text, m.end(), to, whole)) {
            return null;
        }
        return new SpokenSpan(m.end(), numbers.ordinal(Long.parseLong(m.group(1).replace(",", ""))));
    }

    private static boolean ends(String text, int at, int to, boolean whole) {
        return !whole || NormalizationRule.match(ENDS, text, at, Math.max(at, to)) != null;
    }

    private SpokenForms decade(String digits) {
        int n = Integer.parseInt(digits);
        SpokenForms year = n < 1000 ? numbers.cardinal(n).preferred() : numbers.year(n);
        SpokenForms forms = SpokenForms.NONE;
        for (String phrase : year.all().stream().map(f -> String.join(" ", f)).toList()) {
            forms = forms.or(phrase.endsWith("y") ? phrase.substring(0, phrase.length() - 1) + "ies" : phrase + "s");
        }
        if (n < 1000) {
            return forms.or(numbers.cardinal(n).preferred().then("seconds"));
        }
        return n % 100 < 20 ? forms : forms.or(decade(String.valueOf(n % 100)).preferred());
    }

    private SpokenForms phone(String written) {
        SpokenForms forms = numbers.digits(written.replaceAll("\\D", ""));
        if (ROUND_GROUP.matcher(written).find()) {
            forms = groups(written, "oh").or(groups(written, "zero")).or(forms);
        }
        return written.startsWith("+") ? SpokenForms.of("plus").then(forms).or(forms) : forms;
    }

    /** Digit by digit, but "eight hundred" in "1-800". */
    private SpokenForms groups(String written, String zero) {
        SpokenForms all = SpokenForms.SILENT;
        for (String group : written.replaceAll("\\D+", " ").strip().split(" ", -1)) {
            SpokenForms digits = numbers.digits(group);
            String spelled = String.join(" ", digits.first()).replace("oh", zero);
            all = all.then(group.matches("[1-9]00") ? numbers.counted(group).preferred() : SpokenForms.of(spelled));
        }
        return all;
    }

    private static SpokenForms sign(String sign) {
        return switch (sign) {
            case "-" -> SpokenForms.of("minus", "negative");
            case "+" -> SpokenForms.of("plus", "");
            case "±" -> SpokenForms.of("plus or minus");
            case "<" -> SpokenForms.of("less than", "under");
            case ">" -> SpokenForms.of("greater than", "more than", "over");
            default -> SpokenForms.of("about", "approximately", "around", "roughly");
        };
    }
}
