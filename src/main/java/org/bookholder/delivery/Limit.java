package org.bookholder.delivery;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What a profile allows for one setting. */
public sealed interface Limit {
    /** The limit as it is written in a profile. */
    String text();

    /** The words that are allowed. */
    record OneOf(List<String> allowed) implements Limit {
        /** Copies the list. */
        public OneOf {
            allowed = List.copyOf(allowed);
        }

        boolean allows(String value) {
            return allowed.contains(value.toLowerCase(Locale.ROOT));
        }

        @Override
        public String text() {
            return String.join(", ", allowed);
        }
    }

    /**
     * A range of numbers, both ends included.
     *
     * @param least negative infinity if there is no lower end
     * @param most positive infinity if there is no upper end
     */
    record Between(double least, double most) implements Limit {
        boolean allows(double value) {
            return value >= least && value <= most;
        }

        @Override
        public String text() {
            if (least == Double.NEGATIVE_INFINITY) {
                return "at most " + number(most);
            }
            return most == Double.POSITIVE_INFINITY
                    ? "at least " + number(least)
                    : number(least) + " to " + number(most);
        }

        private static String number(double value) {
            String text = String.format(Locale.ROOT, "%.3f", value);
            return text.replaceFirst("\\.?0+$", "");
        }
    }

    /**
     * What a name must look like as a whole.
     *
     * @param text how it is written: a form such as <code>{lesson}.{ending}</code>, or a regular expression
     * @param pattern the same as a pattern
     */
    record Matching(String text, Pattern pattern) implements Limit {
        private static final Map<String, String> PARTS = Map.of("{lesson}", "[A-Za-z0-9_-]+", "{ending}", "[a-z0-9]+");

        /** Reads a form, or a regular expression if no part of a form is in it. */
        static Matching of(String text) {
            StringBuilder pattern = new StringBuilder();
            Matcher part = Pattern.compile("\\{(lesson|ending)}").matcher(text);
            int from = 0;
            while (part.find()) {
                pattern.append(Pattern.quote(text.substring(from, part.start())))
                        .append(PARTS.get(part.group()));
                from = part.end();
            }
            String expression = from == 0 ? text : pattern + Pattern.quote(text.substring(from));
            return new Matching(text, Pattern.compile(expression));
        }

        boolean allows(String name) {
            return pattern.matcher(name).matches();
        }
    }

    /** The words of a list, for messages: "a, b or c". */
    static String or(List<String> words) {
        int last = words.size() - 1;
        return last < 1
                ? String.join("", words)
                : words.stream().limit(last).collect(Collectors.joining(", ")) + " or " + words.get(last);
    }
}
