package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds formulae between dollar signs, {@code $x^2$}, beside amounts of money. As in Pandoc's Markdown (its manual,
 * "tex_math_dollars"), no space stands behind the first sign and before the last, and no digit behind the last; besides,
 * what stands between them must not read like a sentence, nor end in what ties two variables of a program, {@code $a+$b}.
 */
public final class Latex {
    private static final Pattern BETWEEN = Pattern.compile(
            "\\$\\$((?:[^$\\\\]|\\\\.){1,300})\\$\\$|\\$(?! )((?:[^$\\\\]|\\\\.){1,300})(?<! )\\$(?![\\d$])");
    private static final Pattern COMMAND = Pattern.compile("\\\\[A-Za-z]{1,30}");
    private static final Pattern FUNCTION = Pattern.compile("\\b(?:sin|cos|tan|log|exp|lim|max|min|mod|gcd|det)\\b");
    private static final Pattern SENTENCE =
            Pattern.compile("\\p{L}{4,}|\\p{L}{2,}[,;:]? \\p{L}{2,}|[,;:] \\p{L}{2,}|\\d[,.;]? \\p{L}{2,}"
                    + "|[ (](?:and|or|to|of|in|is|not|but|vs|per|than|with|from) |\"");

    /** What ends before another variable; a sign behind "^" is a power. */
    private static final Pattern TIED = Pattern.compile("(?s).*(?<!\\^)[-+=*/.,:;&|<>(\\[]");

    private Latex() {}

    /** Index behind the formula that begins at {@code open}; -1 if none does. */
    public static int end(String text, int open) {
        if (text.charAt(open) != '$') {
            return -1;
        }
        Matcher between = BETWEEN.matcher(text).region(open, text.length()).useTransparentBounds(true);
        if (!between.lookingAt()) {
            return -1;
        }
        String inside = between.group(1) == null ? between.group(2) : between.group(1);
        return isFormula(inside) && !isTied(inside, text, between.end()) ? between.end() : -1;
    }

    private static boolean isTied(String inside, String text, int end) {
        boolean named =
                end < text.length() && (Character.isLetter(text.charAt(end)) || "_{(".indexOf(text.charAt(end)) >= 0);
        return named && TIED.matcher(inside).matches();
    }

    private static boolean isFormula(String inside) {
        if (COMMAND.matcher(inside).find()) {
            return true;
        }
        return !SENTENCE.matcher(FUNCTION.matcher(inside).replaceAll(" ")).find();
    }
}
