package org.bookholder.delivery;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.bookholder.files.FileNames;

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
     * @param lesson the lesson whose film it is: where a form has {lesson} its name is right as it is; empty if not known
     * @param pattern the same as a pattern
     */
    record Matching(String text, String lesson, Pattern pattern) implements Limit {
        private static final Map<String, String> PARTS =
                Map.of("{lesson}", "[" + FileNames.LETTERS + "]+", "{ending}", "[a-z0-9]+");

        /** Reads a form, or a regular expression if no part of a form is in it. */
        static Matching of(String text) {
            return of(text, "");
        }

        private static Matching of(String text, String lesson) {
            StringBuilder pattern = new StringBuilder();
            Matcher part = Pattern.compile("\\{(lesson|ending)}").matcher(text);
            int from = 0;
            while (part.find()) {
                pattern.append(Pattern.quote(text.substring(from, part.start())))
                        .append(part(part.group(), lesson));
                from = part.end();
            }
            String expression = from == 0 ? text : pattern + Pattern.quote(text.substring(from));
            return new Matching(text, lesson, Pattern.compile(expression));
        }

        private static String part(String name, String lesson) {
            String plain = Objects.requireNonNull(PARTS.get(name));
            return lesson.isEmpty() || !name.equals("{lesson}")
                    ? plain
                    : "(?:" + plain + "|(?iu:" + Pattern.quote(lesson) + ")[" + FileNames.LETTERS + "]*)";
        }

        /** The same for the film of a lesson. */
        Matching ofLesson(String name) {
            return of(text, name);
        }

        boolean allows(String name) {
            return pattern.matcher(name).matches();
        }

        /** The signs of a name that stand for no {lesson}, as they are named to people. */
        List<String> refused(String name) {
            if (!text.contains("{lesson}")) {
                return List.of();
            }
            return rest(name)
                    .replaceAll("[." + FileNames.LETTERS + "]", "")
                    .codePoints()
                    .distinct()
                    .mapToObj(sign -> Character.isWhitespace(sign) ? "the space" : "'" + Character.toString(sign) + "'")
                    .distinct()
                    .toList();
        }

        /** A name like this one that is allowed; empty if there is none at hand. */
        Optional<String> instead(String name) {
            String rest = rest(name);
            String own = FileNames.stem(Path.of(name));
            String kept = own.substring(0, own.length() - rest.length());
            String plain = FileNames.plain(rest);
            String between = kept.isEmpty() || plain.isEmpty() ? "" : "-";
            String ending = name.substring(own.length()).toLowerCase(Locale.ROOT);
            return Optional.of(kept + between + plain + ending).filter(this::allows);
        }

        /** What follows the lesson's name, without the ending. */
        private String rest(String name) {
            String own = FileNames.stem(Path.of(name));
            return !lesson.isEmpty() && own.regionMatches(true, 0, lesson, 0, lesson.length())
                    ? own.substring(lesson.length())
                    : own;
        }
    }

    /** The words of a list, for messages: "a, b or c". */
    static String or(List<String> words) {
        return listed(words, " or ");
    }

    /** The words of a list, for messages: "a, b and c". */
    static String and(List<String> words) {
        return listed(words, " and ");
    }

    private static String listed(List<String> words, String before) {
        int last = words.size() - 1;
        return last < 1
                ? String.join("", words)
                : words.stream().limit(last).collect(Collectors.joining(", ")) + before + words.get(last);
    }
}
