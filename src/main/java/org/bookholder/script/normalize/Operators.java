package org.bookholder.script.normalize;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Signs of several characters, as programs and commands have them: "!=", "&&", "->". What is said of them is from memory. */
final class Operators {
    private static final Pattern OPERATOR = Pattern.compile("&&|\\|\\||!==?|===?|<=|>=|=>|->|<-|<>");

    private static final Map<String, SpokenForms> SAID = Map.ofEntries(
            Map.entry(
                    "&&",
                    SpokenForms.of(
                            "and", "and and", "and then", "double ampersand", "ampersand ampersand", "double and")),
            Map.entry("||", SpokenForms.of("or", "or or", "or else", "double pipe", "pipe pipe")),
            Map.entry("!=", unequal()),
            Map.entry("!==", unequal().or("not strictly equal to")),
            Map.entry("<>", unequal()),
            Map.entry("==", SpokenForms.of("equals", "is equal to", "equals equals", "double equals", "is")),
            Map.entry("===", SpokenForms.of("equals", "triple equals", "strictly equals", "is strictly equal to")),
            Map.entry("<=", Symbols.of("\u2264")),
            Map.entry(">=", Symbols.of("\u2265")),
            Map.entry("=>", SpokenForms.of("arrow", "to", "gives", "goes to", "becomes", "fat arrow", "")),
            Map.entry("->", Symbols.of("\u2192").or("arrow")),
            Map.entry("<-", SpokenForms.of("from", "arrow", "gets", "left arrow", "")));

    private Operators() {}

    private static SpokenForms unequal() {
        return SpokenForms.of(
                "is not equal to",
                "not equal to",
                "not equals",
                "does not equal",
                "is not",
                "not",
                "isn't equal to",
                "bang equals",
                "unequal to");
    }

    /** Reads the sign at {@code at}; null if there is none. */
    static @Nullable SpokenSpan at(String chunk, int at) {
        Matcher sign = NormalizationRule.match(OPERATOR, chunk, at, chunk.length());
        return sign == null ? null : new SpokenSpan(sign.end(), SAID.getOrDefault(sign.group(), SpokenForms.SILENT));
    }
}
