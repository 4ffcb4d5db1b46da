package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Knows how one kind of written text is said. */
@FunctionalInterface
public interface NormalizationRule {
    /**
     * Part of a pattern: a number with or without thousands separators and decimals. The bounds keep the matcher from
     * recursing deeply; nobody reads out anything longer as one number.
     */
    String NUMBER = "(?:\\d{1,3}(?:,\\d{3}){1,5}(?!\\d)(?:\\.\\d{1,9})?|\\d{1,15}(?!\\d)(?:\\.\\d{1,9})?|\\.\\d{1,9})";

    /** Part of a pattern: only punctuation follows before the next space, or a dash follows. */
    String END = "(?=[.,;:!?)\\]}\"'\\u2026*_~-]{0,9}(?:\\s|$|[\\u2013\\u2014])|\\u2026|\\.\\.\\.)";

    /** The pattern of {@link #END} by itself. */
    Pattern ENDS = Pattern.compile(END);

    /** Behind a number: things that it may count, so that it need not be a year. */
    Pattern THINGS = Pattern.compile(
            "\\s(?!(?:was|is|has|as|us|its|this|sees|shows)\\b)(?:people|men|women|children|\\p{Ll}{2,20}s)\\b");

    /** Part of a pattern: what may separate the two ends of a range. */
    String TO = "\\s?[-\\u2013]\\s?";

    /**
     * Reads the text at {@code from}.
     *
     * @param text text in plain typography
     * @param from first character, at the start of a written word
     * @param to index after the last character that may be read
     * @return what was read, or null if it is not of this kind
     */
    @Nullable SpokenSpan at(String text, int from, int to);

    /** Whether the rule may find anything where {@code first} is the first character; most words can be told from its by that. */
    default boolean mayBegin(char first) {
        return true;
    }

    /** Whether only what {@link #END} allows follows from {@code at} on. */
    static boolean endsAt(String text, int at) {
        return match(ENDS, text, at, at) != null;
    }

    /** Matches {@code pattern} at {@code from}; look-aheads may see text beyond {@code to}, but it is not read. */
    static @Nullable Matcher match(Pattern pattern, String text, int from, int to) {
        Matcher matcher = pattern.matcher(text)
                .region(from, to)
                .useTransparentBounds(true)
                .useAnchoringBounds(false);
        return matcher.lookingAt() ? matcher : null;
    }
}
