package org.bookholder.script.normalize;

import java.util.Map;

/** Single symbols and how they are said. */
final class Symbols {
    private static final Map<String, SpokenForms> SAID = Map.ofEntries(
            Map.entry("&", SpokenForms.of("and")),
            Map.entry("+", SpokenForms.of("plus", "and")),
            Map.entry("=", SpokenForms.of("equals", "is equal to", "is", "equal", "be")),
            Map.entry("@", SpokenForms.of("at")),
            Map.entry("%", SpokenForms.of("percent", "per cent")),
            Map.entry("‰", SpokenForms.of("per thousand", "per mille")),
            Map.entry("°", SpokenForms.of("degrees")),
            Map.entry("×", SpokenForms.of("times", "by")),
            Map.entry("÷", SpokenForms.of("divided by", "over")),
            Map.entry("∗", SpokenForms.of("times")),
            Map.entry("⋅", SpokenForms.of("times", "dot")),
            Map.entry("±", SpokenForms.of("plus or minus", "plus minus")),
            Map.entry("≈", SpokenForms.of("about", "approximately", "is about", "is approximately")),
            Map.entry("≠", SpokenForms.of("is not equal to", "not equal to", "does not equal", "is not")),
            Map.entry("~", SpokenForms.of("about", "approximately", "around", "")),
            Map.entry("<", SpokenForms.of("less than", "is less than")),
            Map.entry(">", SpokenForms.of("greater than", "is greater than", "is more than", "more than")),
            Map.entry(
                    "≤", SpokenForms.of("at most", "less than or equal to", "is less than or equal to", "is at most")),
            Map.entry(
                    "≥",
                    SpokenForms.of(
                            "at least", "greater than or equal to", "is greater than or equal to", "is at least")),
            Map.entry("²", SpokenForms.of("squared")),
            Map.entry("³", SpokenForms.of("cubed")),
            Map.entry("⁺", SpokenForms.of("plus")),
            Map.entry("⁻", SpokenForms.of("minus")),
            Map.entry("∴", SpokenForms.of("therefore", "so")),
            Map.entry("∑", SpokenForms.of("the sum of", "sum of")),
            Map.entry("√", SpokenForms.of("the square root of", "square root of", "root")),
            Map.entry("∞", SpokenForms.of("infinity")),
            Map.entry(
                    "→",
                    SpokenForms.of("to", "", "becomes", "gives", "goes to", "through", "then", "leads to", "down to")),
            Map.entry("™", SpokenForms.of("", "trademark", "t m")),
            Map.entry("®", SpokenForms.of("", "registered", "registered trademark")),
            Map.entry("©", SpokenForms.of("copyright", "")),
            Map.entry("№", SpokenForms.of("number")),
            Map.entry("⌘", SpokenForms.of("command")),
            Map.entry("⌥", SpokenForms.of("option")),
            Map.entry("⇧", SpokenForms.of("shift")),
            Map.entry("⌃", SpokenForms.of("control")),
            Map.entry("§", SpokenForms.of("section", "sections")),
            Map.entry("¶", SpokenForms.of("paragraph", "paragraphs")),
            Map.entry("$", SpokenForms.of("dollars", "dollar")),
            Map.entry("£", SpokenForms.of("pounds", "pound")),
            Map.entry("€", SpokenForms.of("euros", "euro")),
            Map.entry("¥", SpokenForms.of("yen")),
            Map.entry("₹", SpokenForms.of("rupees", "rupee")),
            Map.entry("¢", SpokenForms.of("cents")),
            Map.entry("|", SpokenForms.of("pipe", "piped to", "pipe to", "into", "piped into", "vertical bar")),
            Map.entry("\\", SpokenForms.of("backslash")));

    private Symbols() {}

    /** The ways to say a symbol; silence for any other one. */
    static SpokenForms of(String symbol) {
        return SAID.getOrDefault(symbol, SpokenForms.SILENT);
    }
}
