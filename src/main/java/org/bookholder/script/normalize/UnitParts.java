package org.bookholder.script.normalize;

import java.util.List;

/** Small parts of one unit: "half a percent", "a thousandth of an inch", "half a mil". */
final class UnitParts {
    /** Names beyond these many forms are left out. */
    private static final int ENOUGH = 12;

    private final NumberWords numbers;

    UnitParts(NumberWords numbers) {
        this.numbers = numbers;
    }

    /**
     * The ways to say a part, with each name that the unit has.
     *
     * @param number a decimal below one, as written
     */
    SpokenForms of(String number, String symbol) {
        SpokenForms forms = SpokenForms.NONE;
        for (List<String> name : Units.said(symbol, true).all()) {
            String unit = String.join(" ", name);
            boolean single = !unit.endsWith("s") && !unit.contains("degrees");
            forms = single && forms.all().size() < ENOUGH
                    ? forms.or(part(number, unit).first(6))
                    : forms;
        }
        return forms;
    }

    private SpokenForms part(String number, String unit) {
        String digits = number.startsWith("0.") ? number.substring(1) : number;
        String article = Units.article(unit);
        SpokenForms part = switch (digits) {
            case ".5" -> SpokenForms.of("half " + article, "half of one", "half", "a half", "one half");
            case ".25" ->
                SpokenForms.of("a quarter of " + article, "a quarter", "quarter of " + article, "one quarter");
            case ".75" -> SpokenForms.of("three quarters of " + article, "three quarter");
            default -> numbers.tenths(number).then("of " + article, "of one");
        };
        return part.then(unit);
    }
}
