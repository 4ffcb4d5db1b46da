package org.bookholder.script.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * A unit of writing and speech: usually one word, sometimes several words that share a spoken form ("$2.5 million", "5
 * pm").
 *
 * @param written as shown to the presenter, with its punctuation; a dash or ellipsis between spaces belongs to the word
 *     before it
 * @param spoken the ways to say it, the preferred one first, at least one; each is one or more words as spoken, in
 *     lower case, letters and apostrophes only
 * @param emphasis how the author stressed it
 */
public record ScriptWord(String written, List<List<String>> spoken, Emphasis emphasis) {
    private static final Pattern FRONT = Pattern.compile("^(?:(?![-\u2212\u2013][.\\d$£€¥])[^\\p{L}\\p{N}$£€¥#&@%+])+");
    private static final Pattern BACK = Pattern.compile("[^\\p{L}\\p{M}\\p{N}%°$£€¥+#]+$");
    private static final Pattern DOTTED = Pattern.compile("(?:^|\\s)(?:\\p{L}\\.){1,9}\\p{L}$");

    /** The bullet or number of a list's item before its first word. */
    private static final Pattern LIST_MARK = Pattern.compile("^(?:•|\\d{1,9}[.)]) (?=\\S)");

    /** How the author stressed a word. */
    public enum Emphasis {
        /** Not stressed. */
        NONE,
        /** {@code *stressed*}. */
        LIGHT,
        /** {@code **strongly stressed**}. */
        STRONG
    }

    /** Copies the lists and checks that there is something to speak. */
    public ScriptWord {
        List<List<String>> forms = new ArrayList<>(spoken.size());
        for (List<String> form : spoken) {
            forms.add(List.copyOf(form));
        }
        spoken = List.copyOf(forms);
        if (spoken.isEmpty() || spoken.contains(List.<String>of())) {
            throw new IllegalArgumentException("word '" + written + "' must have a spoken form");
        }
    }

    /** Whether it is written in another way than it is said, as numbers and units are, and may be said in several ways. */
    public boolean hasChoice() {
        return spoken.size() > 1
                && !String.join(" ", spoken.get(0))
                        .replace('\u2019', '\'')
                        .equals(plain().toLowerCase(Locale.ROOT)
                                .replace('\u2019', '\'')
                                .replace('-', ' '));
    }

    /** The written form without the bullet or number that stands before it because it begins an item of a list. */
    public String unmarked() {
        return LIST_MARK.matcher(written).replaceFirst("");
    }

    /**
     * Whether the number before an item of a list was read.
     *
     * @param said the form in which the word was heard, words separated by single spaces; empty if that is not known
     */
    public boolean isNumberIn(String said) {
        return !unmarked().equals(written)
                && spoken.stream().anyMatch(form -> said.endsWith(" " + String.join(" ", form)));
    }

    /** The written form without the punctuation around it; the stops of "U.S." and "e.g." stay. */
    public String plain() {
        String front = FRONT.matcher(written).replaceFirst("");
        String plain = BACK.matcher(front).replaceFirst("");
        if (front.startsWith(".", plain.length()) && DOTTED.matcher(plain).find()) {
            plain += ".";
        }
        return plain.isEmpty() ? written : plain;
    }
}
