package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.bookholder.script.model.LeftOut;

/**
 * Which columns of a table are read aloud: those that were chosen, else those whose heading says so, else the one with
 * the most words if it holds sentences. The other columns are directions.
 *
 * @param spoken the columns that are read, from 0
 * @param headed whether the first row holds headings, which are neither read nor shown
 * @param notes what the author should know of the choice
 */
record SpokenColumns(Set<Integer> spoken, boolean headed, List<LeftOut> notes) {
    /** What columns for the voice are called in scripts; common practice. */
    private static final Pattern SPOKEN =
            Pattern.compile("(?i)\\b(?:audio|sound|voice(?: ?-?over)?s?|v\\.?/?o\\.?|narrat"
                    + "(?:ion|or|ive)|spoken|speech|script|words|says?|saying|said|talk(?:ing)?|host|presenter|dialog(?:ue)?|"
                    + "text|copy|commentary|commentator|lines?|read(?:ing)?|speaker|instructor|teacher|tutor)\\b");

    /** The same where it holds sentences: with a few words in a cell it lists things that are called so. */
    private static final Pattern MAYBE_SPOKEN = Pattern.compile("(?i)\\b(?:anchor|sync|track)\\b");

    /** What columns for the eyes are called, even where a word of the voice stands in their heading. */
    private static final Pattern SHOWN =
            Pattern.compile("(?i)\\b(?:(?:on|off)[- ]?screen|screen|visuals?|video|picture|"
                    + "image|shots?|graphics?|slides?|b-?roll|camera|footage|notes?|comments?|titles?|captions?|sfx|music|effects?|time|timing|duration|number|no|#|scenes?|action|directions?|props?|line"
                    + " (?:no|number))\\b");

    /** Headings of columns are short. */
    private static final int HEADING_WORDS = 4;

    /** On average in a cell of a column that is read without a heading that says so. */
    private static final int SENTENCE_WORDS = 4;

    /** On average in a cell of a column of cues, which names of items seldom have. */
    private static final int CUE_WORDS = 3;

    private static final Pattern SENTENCE = Pattern.compile("(?s).*[.!?,;\u2026]");

    /** Copies what it is given. */
    SpokenColumns {
        spoken = Set.copyOf(spoken);
        notes = List.copyOf(notes);
    }

    /**
     * Chooses.
     *
     * @param number the table's place in the file, from 1, for what is said of it
     * @param rows the texts of its cells
     */
    static SpokenColumns of(int number, List<List<String>> rows, int sourceLine) {
        if (rows.isEmpty()) {
            return new SpokenColumns(Set.of(), false, List.of());
        }
        Set<Integer> named = named(rows);
        if (!named.isEmpty()) {
            return new SpokenColumns(named, true, List.of());
        }
        boolean headed = looksLikeHeadings(rows);
        int longest = longest(rows, headed);
        String what = "table " + number + ": " + String.join(" | ", rows.get(0));
        if (longest < 0) {
            String why = "all of it is shown as directions, because no heading says what is read";
            return new SpokenColumns(Set.of(), false, List.of(note(what, why, sourceLine)));
        }
        String why =
                "column " + (longest + 1) + " is read, because it holds the most words and no heading says what is "
                        + "read; the rest is shown as directions";
        return new SpokenColumns(Set.of(longest), headed, List.of(note(what, why, sourceLine)));
    }

    /**
     * Chooses for a table that may be none, as a list whose items have names before them: all columns are read unless headings say which,
     * or cues in capitals stand in all the others.
     *
     * @param number the table's place in the file, from 1, for what is said of it
     * @param rows the texts of its cells
     */
    static SpokenColumns guessed(int number, List<List<String>> rows) {
        SpokenColumns columns = of(number, rows, 0);
        int width = rows.get(0).size();
        List<Integer> others = IntStream.range(0, width)
                .filter(column -> !columns.spoken.contains(column))
                .boxed()
                .toList();
        boolean named = !named(rows).isEmpty();
        boolean sure = named
                ? isHeadingRow(rows, columns.spoken)
                : others.size() < width && others.stream().allMatch(column -> holdsCues(rows, column));
        if (sure) {
            return columns;
        }
        String what = "table " + number + ": " + String.join(" | ", rows.get(0));
        String why = "all of it is read, because no heading says what is read";
        return new SpokenColumns(
                IntStream.range(0, width).boxed().collect(Collectors.toSet()), false, List.of(note(what, why, 0)));
    }

    /** Whether the first row holds no part of a sentence, and no name that stands before other rows, too. */
    private static boolean isHeadingRow(List<List<String>> rows, Set<Integer> named) {
        List<String> first = rows.get(0);
        long lower = first.stream()
                .filter(cell -> !cell.isEmpty() && Character.isLowerCase(cell.charAt(0)))
                .count();
        return looksLikeHeadings(rows)
                && (lower == 0 || lower == first.size())
                && first.stream().noneMatch(cell -> SENTENCE.matcher(cell).matches())
                && rows.stream()
                        .filter(row -> row.size() == first.size() && !row.equals(first))
                        .noneMatch(row -> named.stream()
                                .anyMatch(column -> row.get(column).equals(first.get(column))));
    }

    /** Whether a column holds cues in capitals, and not names. */
    private static boolean holdsCues(List<List<String>> rows, int column) {
        List<String> cells = rows.stream()
                .filter(row -> column < row.size() && !row.get(column).isBlank())
                .map(row -> row.get(column))
                .toList();
        return cells.stream().noneMatch(cell -> cell.chars().anyMatch(Character::isLowerCase))
                && cells.stream().mapToInt(SpokenColumns::words).average().orElse(0) >= CUE_WORDS;
    }

    /** The columns that somebody chose. */
    static SpokenColumns chosen(Set<Integer> columns, List<List<String>> rows) {
        return new SpokenColumns(
                columns,
                !rows.isEmpty() && (!named(rows).isEmpty() || (!columns.isEmpty() && looksLikeHeadings(rows))),
                List.of());
    }

    private static LeftOut note(String what, String why, int sourceLine) {
        return new LeftOut(sourceLine, ScriptBuilder.brief(what), why);
    }

    private static Set<Integer> named(List<List<String>> rows) {
        List<String> heading = rows.get(0);
        Set<Integer> named = new HashSet<>();
        for (int i = 0; i < heading.size(); i++) {
            String cell = heading.get(i);
            if (words(cell) <= HEADING_WORDS
                    && (SPOKEN.matcher(cell).find()
                            || (MAYBE_SPOKEN.matcher(cell).find() && holdsSentences(rows, i)))
                    && !SHOWN.matcher(cell).find()) {
                named.add(i);
            }
        }
        return named;
    }

    private static boolean holdsSentences(List<List<String>> rows, int column) {
        return rows.stream()
                        .skip(1)
                        .filter(row -> column < row.size())
                        .mapToInt(row -> words(row.get(column)))
                        .filter(words -> words > 0)
                        .average()
                        .orElse(0)
                >= SENTENCE_WORDS;
    }

    private static boolean looksLikeHeadings(List<List<String>> rows) {
        return rows.size() > 1 && rows.get(0).stream().noneMatch(cell -> words(cell) > HEADING_WORDS);
    }

    /** The column that holds the most words; -1 if they are no sentences, or there is only one column. */
    private static int longest(List<List<String>> rows, boolean headed) {
        List<List<String>> body = headed ? rows.subList(1, rows.size()) : rows;
        int width = rows.stream().mapToInt(List::size).max().orElse(0);
        List<Integer> counts = new ArrayList<>();
        for (int i = 0; i < width; i++) {
            int column = i;
            counts.add(body.stream()
                    .filter(row -> column < row.size())
                    .mapToInt(row -> words(row.get(column)))
                    .sum());
        }
        int most = counts.stream().mapToInt(Integer::intValue).max().orElse(0);
        return width > 1 && most >= SENTENCE_WORDS * body.size() ? counts.indexOf(most) : -1;
    }

    /** How many words stand in a cell. */
    static int words(String cell) {
        String text = cell.strip();
        return text.isEmpty() ? 0 : text.split("\\s+").length;
    }
}
