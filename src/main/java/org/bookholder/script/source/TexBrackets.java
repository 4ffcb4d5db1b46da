package org.bookholder.script.source;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.script.normalize.Latex;

/**
 * Formulae between LaTeX's own brackets, {@code \(x^2\)} and {@code \[x^2\]}, put between dollar signs, by which the rest of the program
 * knows them. CommonMark writes plain brackets in the same way; so what could be one stays.
 */
final class TexBrackets {
    private static final Pattern FORMULA = Pattern.compile(
            "(?<![\\\\\\p{L}\\p{N}])\\\\\\((.{1,300}?)\\\\\\)|(?<![\\\\\\p{L}\\p{N}])\\\\\\[((?s:.{1,300}?))\\\\\\]");

    /** What only a formula holds. */
    private static final Pattern SURE =
            Pattern.compile("(?<!\\\\)[\\^]|\\\\[A-Za-z]{2,}|_\\{|(?<![\\p{L}\\p{N}_])\\p{L}_\\w(?!\\w)");

    /** What a formula within a sentence holds: a sign, or one letter alone. */
    private static final Pattern SIGN = Pattern.compile("[+=<>*/]|[\\p{N}\\s]-|^\\s*\\p{L}\\s*$");

    private TexBrackets() {}

    /** The text with dollar signs around its formulae, in as many rows. */
    static String inDollars(String text) {
        return FORMULA.matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(
                        found.group(1) != null
                                ? within(text, found.start(), found.group(1), found.group())
                                : apart(found.group(2), found.group())));
    }

    private static String within(String text, int start, String inside, String written) {
        String formula = "$" + inside.strip() + "$";
        boolean lineBegins = start == 0 || text.charAt(start - 1) == '\n';
        boolean sure = SURE.matcher(inside).find()
                || (!lineBegins && SIGN.matcher(inside).find());
        return sure && Latex.end(formula, 0) == formula.length() ? formula : written;
    }

    private static String apart(String inside, String written) {
        String formula = "$$" + inside.replaceAll("\\s+", " ").strip() + "$$";
        boolean spaced = inside.matches("(?s)\\s.*[+=<>].*\\s");
        boolean sure = SURE.matcher(inside).find() || spaced;
        return sure && Latex.end(formula, 0) == formula.length() ? formula + inside.replaceAll("[^\\n]", "") : written;
    }
}
