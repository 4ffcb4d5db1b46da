package org.bookholder.script.normalize;

import java.math.BigDecimal;
import java.util.List;
import java.util.regex.Pattern;

/** Two numbers with a dash between them: ranges and scores. */
final class Ranges {
    private static final Pattern LABEL = Pattern.compile(
            "(?i)\\b(?:fig|figure|page|pp|p|table|section|sec|chapter|ch|part|row|step|line|lesson|exercise|unit)s?\\.?\\s$");

    /** Of those, the labels of several and of pages: behind one figure or table a dash divides parts of its number. */
    private static final Pattern SEVERAL = Pattern.compile("(?i)(?:\\b(?:page|pp|p)\\.?|s\\.?)\\s$");

    private final NumberWords numbers;

    Ranges(NumberWords numbers) {
        this.numbers = numbers;
    }

    /**
     * Both ends of a range are mostly said in the same manner; the likely ways come first. "10 - 3" may be a difference as well.
     */
    SpokenForms usual(String first, String last) {
        SpokenForms low = numbers.written(first);
        SpokenForms high = numbers.written(last);
        SpokenForms forms = low.preferred().then("to", "through", "until", "").then(high.preferred());
        if (NumberWords.value(first).compareTo(NumberWords.value(last)) > 0) {
            forms = forms.or(low.first(6).then("minus").then(high.first(2)));
        }
        for (int i = 1; i < Math.min(low.all().size(), high.all().size()); i++) {
            SpokenForms one = new SpokenForms(List.of(low.all().get(i)));
            forms = forms.or(
                    one.then("to", "").then(new SpokenForms(List.of(high.all().get(i)))));
        }
        if (first.equals("0") || last.equals("0")) {
            forms = forms.or(score(first, last, "nil")).or(score(first, last, "nothing"));
            forms = first.matches("15|30|40|0") && last.matches("15|30|40|0")
                    ? forms.or(score(first, last, "love"))
                    : forms;
        }
        return forms.or(low.then("to").then(high));
    }

    /** "One eighty to two hundred", "ten to fifty thousand", "two or three", "four all". */
    SpokenForms rare(String first, String last) {
        SpokenForms forms = numbers.shortened(first).then("to", "").then(numbers.shortened(last));
        if (first.equals("0")) {
            forms = forms.or(
                    SpokenForms.of("nought to").then(numbers.counted(last).first(3)));
        }
        BigDecimal low = NumberWords.value(first);
        BigDecimal high = NumberWords.value(last);
        for (int places : new int[] {6, 3, 2}) {
            BigDecimal scale = BigDecimal.TEN.pow(places);
            boolean shared = low.signum() > 0
                    && low.compareTo(high) < 0
                    && low.remainder(scale).signum() == 0
                    && high.remainder(scale).signum() == 0
                    && (places > 2 || high.compareTo(BigDecimal.valueOf(1000)) < 0);
            if (shared) {
                SpokenForms bare = numbers.cardinal(low.divide(scale).longValue())
                        .preferred()
                        .then("to")
                        .then(numbers.cardinal(high.divide(scale).longValue()).preferred());
                return bare.then(places == 6 ? "million" : places == 3 ? "thousand" : "hundred")
                        .or(forms);
            }
        }
        if (high.subtract(low).compareTo(BigDecimal.ONE) == 0 && high.compareTo(BigDecimal.TEN) <= 0) {
            return forms.or(numbers.counted(first)
                    .preferred()
                    .then("or")
                    .then(numbers.counted(last).preferred()));
        }
        return low.compareTo(high) == 0
                ? forms.or(numbers.counted(first).preferred().then("all"))
                : forms;
    }

    /**
     * Behind a label: "figure two dash three", "rows three and four"; none if there is no label.
     *
     * @param before the text before the range
     */
    SpokenForms labelled(String first, String last, String before) {
        if (!LABEL.matcher(before).find()) {
            return SpokenForms.NONE;
        }
        String full = SEVERAL.matcher(before).find() ? inFull(first, last) : last;
        SpokenForms forms = dashed(first, last);
        return full.equals(last)
                ? forms
                : forms.or(dashed(first, full))
                        .or(numbers.counted(first)
                                .preferred()
                                .then("to", "through", "")
                                .then(numbers.counted(full).preferred()));
    }

    private SpokenForms dashed(String first, String last) {
        boolean neighbours =
                NumberWords.value(last).subtract(NumberWords.value(first)).compareTo(BigDecimal.ONE) == 0;
        SpokenForms between = neighbours ? SpokenForms.of("dash", "and") : SpokenForms.of("dash");
        return numbers.counted(first)
                .preferred()
                .then(between)
                .then(numbers.counted(last).preferred());
    }

    /** The second number with the figures that it shares with the first: "22-3" are the pages 22 to 23. */
    static String inFull(String first, String last) {
        boolean cut = first.matches("\\d{2,4}")
                && last.matches("\\d{1,3}")
                && last.length() < first.length()
                && last.compareTo(first.substring(first.length() - last.length())) > 0;
        return cut ? first.substring(0, first.length() - last.length()) + last : last;
    }

    /** "3-0" as a score. */
    private SpokenForms score(String first, String last, String zero) {
        SpokenForms low = first.equals("0")
                ? SpokenForms.of(zero)
                : numbers.counted(first).preferred();
        return low.then("", zero.equals("nothing") ? "to" : "")
                .then(
                        last.equals("0")
                                ? SpokenForms.of(zero, "oh")
                                : numbers.counted(last).preferred());
    }

    /** "Between ten and twenty" where the word is not written; none of what goes down. */
    SpokenForms withBetween(String first, String last) {
        return NumberWords.value(first).compareTo(NumberWords.value(last)) < 0
                ? SpokenForms.of("between").then(between(first, last))
                : SpokenForms.NONE;
    }

    SpokenForms between(String first, String last) {
        return numbers.written(first)
                .preferred()
                .then("and")
                .then(numbers.written(last).preferred());
    }
}
