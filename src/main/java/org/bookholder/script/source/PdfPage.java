package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A page of a PDF on which text stands beside other text: finds the columns of its tables by where the words begin, and their rows by the
 * order in which the words are stored, which is cell by cell in most files, or by the space between the rows.
 */
final class PdfPage {
    /** A gap of so many sizes of a letter parts two cells; where spaces are stored as letters, as in most files, the second. */
    private static final double GAP = 0.9;

    private static final double GAP_BESIDE_SPACES = 0.3;

    /** Lines of one cell lie no further apart, in sizes of a letter, and rows of a table no further than the second. */
    private static final double NEAR = 1.5;

    private static final double ROW = 3;

    /** Words that belong to one column begin no further apart, in points. */
    private static final double EDGE = 3;

    /** The space between two rows of a table is wider than that between two lines of a cell by so many sizes of a letter. */
    private static final double WIDER = 0.2;

    /** Lines of one cell are at least so far apart, in sizes of a letter; those of two cells may be closer. */
    private static final double LINE = 1.15;

    /** Nor are they further apart than this, also where each row of the table is one line. */
    private static final double MOST_LINE = 1.4;

    /**
     * A word and where it stands, in points from the page's left and upper edge.
     *
     * @param order its place among the words as they are stored
     */
    record Word(String text, double left, double right, double down, double size, int order) {}

    /**
     * A piece of a page.
     *
     * @param text a line; empty for a table
     * @param size of its letters in points
     * @param apart whether a wider gap stands above it
     * @param table the cells of a table's rows; empty for a line
     */
    record Piece(String text, double size, boolean apart, List<List<String>> table) {
        Piece {
            table = table.stream().map(List::copyOf).toList();
        }
    }

    /** The mark of an item of a list. */
    static final Pattern MARK = Pattern.compile("[\u2022\u25e6\u25aa\u2023\u2013*-]|\\d{1,3}[.)]");

    private final List<List<Word>> lines = new ArrayList<>();
    private final List<Double> columns = new ArrayList<>();

    private final List<Word> stored;
    private final boolean sure;
    private final double gap;

    private PdfPage(List<Word> words, boolean sure) {
        this.stored = List.copyOf(words);
        this.sure = sure;
        long spaced = words.stream().filter(word -> word.text.indexOf(' ') > 0).count();
        this.gap = spaced * 3 > words.size() ? GAP_BESIDE_SPACES : GAP;
        words.stream().sorted(Comparator.comparingDouble(Word::down)).forEach(word -> {
            List<Word> last = lines.isEmpty() ? List.of() : lines.get(lines.size() - 1);
            if (last.isEmpty() || word.down - last.get(0).down > word.size * 0.4) {
                last = new ArrayList<>();
                lines.add(last);
            }
            last.add(word);
        });
        lines.forEach(line -> line.sort(Comparator.comparingDouble(Word::left)));
    }

    /**
     * The lines and tables of a page from top to bottom; empty if no table is found.
     *
     * @param sure whether text goes on beside other text so often that two rows are enough for a table; the columns of a newspaper are none
     */
    static List<Piece> pieces(List<Word> words, boolean sure) {
        PdfPage page = new PdfPage(words, sure);
        page.findColumns();
        return page.columns.size() < 2 ? List.of() : page.pieces();
    }

    private void findColumns() {
        List<Double> starts = new ArrayList<>();
        for (List<Word> line : lines) {
            for (int i = 1; i < line.size(); i++) {
                boolean mark = MARK.matcher(line.get(i - 1).text).matches()
                        || MARK.matcher(line.get(i).text).matches();
                if (!mark && line.get(i).left - line.get(i - 1).right > line.get(i).size * gap) {
                    starts.add(line.get(i).left);
                }
            }
        }
        for (int i = 1; i < stored.size(); i++) {
            Word before = stored.get(i - 1);
            Word word = stored.get(i);
            if (word.down < before.down - word.size / 2 && word.left > before.right) {
                starts.add(word.left);
            }
        }
        for (double start : starts) {
            boolean known = columns.stream().anyMatch(column -> Math.abs(column - start) <= EDGE);
            long times = starts.stream()
                    .filter(other -> Math.abs(other - start) <= EDGE)
                    .count();
            if (!known && times > 1) {
                columns.add(start);
            }
        }
        columns.sort(Comparator.naturalOrder());
        if (!columns.isEmpty()) {
            double second = columns.get(0);
            columns.add(
                    0,
                    stored.stream()
                            .filter(word -> word.right <= second)
                            .mapToDouble(Word::left)
                            .min()
                            .orElse(second));
        }
    }

    private int column(Word word) {
        int column = 0;
        while (column + 1 < columns.size() && columns.get(column + 1) - EDGE <= word.left) {
            column++;
        }
        return column;
    }

    /** Whether no word of a line stands over the beginning of a column, or before the first. */
    private boolean fits(List<Word> line) {
        return line.get(0).left >= columns.get(0) - EDGE
                && line.stream().noneMatch(word -> {
                    int column = column(word);
                    return column + 1 < columns.size() && word.right > columns.get(column + 1);
                })
                && !goesOver(line);
    }

    /** Whether a line goes on over the beginning of a column as a sentence does, without a gap. */
    private boolean goesOver(List<Word> line) {
        for (int i = 1; i < line.size(); i++) {
            Word word = line.get(i);
            boolean next = column(line.get(i - 1)) < column(word);
            if (next
                    && Math.abs(word.left - columns.get(column(word))) > EDGE
                    && word.left - line.get(i - 1).right < word.size * gap) {
                return true;
            }
        }
        return false;
    }

    /** Whether a line holds one piece of text above each column, as headings stand, also where they are centred. */
    private boolean isHeading(List<Word> line) {
        int column = 0;
        for (int i = 0; i < line.size(); i++) {
            Word word = line.get(i);
            boolean next = i > 0 && word.left - line.get(i - 1).right > word.size * gap;
            column += next ? 1 : 0;
            boolean over = column + 1 < columns.size() && word.right > columns.get(column + 1);
            if (column >= columns.size() || over || word.left < columns.get(column) - EDGE) {
                return false;
            }
        }
        return column + 1 == columns.size();
    }

    private boolean isDivided(List<Word> line) {
        return column(line.get(0)) < column(line.get(line.size() - 1));
    }

    private List<Piece> pieces() {
        List<Piece> pieces = new ArrayList<>();
        boolean found = false;
        int fewest = sure ? 2 : 3;
        for (int i = 0; i < lines.size(); ) {
            int end = tableEnd(i);
            if (end > i + 1) {
                List<List<Word>> region = lines.subList(i, end);
                List<List<String>> table = table(region);
                int crossings = crossings(region);
                if (isNewspaper(table, crossings) || isTorn(region)) {
                    return List.of();
                }
                found |= table.size() >= fewest && crossings >= fewest;
                pieces.add(new Piece("", size(lines.get(i)), true, table));
                i = end;
            } else {
                List<Word> line = lines.get(i);
                boolean apart = i == 0 || down(i) - down(i - 1) > size(line) * 1.6;
                pieces.add(new Piece(text(line), size(line), apart, List.of()));
                i++;
            }
        }
        return found ? pieces : List.of();
    }

    /** Index behind the table that begins in a line; the index of that line if none does. */
    private int tableEnd(int from) {
        if (!isHeading(lines.get(from)) && (!fits(lines.get(from)) || !isDivided(lines.get(from)))) {
            return from;
        }
        int end = from + 1;
        for (int i = from + 1; i < lines.size(); i++) {
            boolean right = column(lines.get(i).get(0)) > 0;
            boolean near = down(i) - down(i - 1) < size(lines.get(i)) * NEAR;
            if (!fits(lines.get(i))) {
                if (end < i || !isMerged(i)) {
                    return end;
                }
            } else if (isDivided(lines.get(i)) || right || (near && end == i)) {
                end = i + 1;
                continue;
            }
            end = isMerged(i) ? i + 1 : end;
        }
        return end;
    }

    /** Whether a line is a cell over all columns: one line between two rows. */
    private boolean isMerged(int i) {
        double most = size(lines.get(i)) * ROW;
        return i > 0
                && i + 1 < lines.size()
                && !fits(lines.get(i))
                && (fits(lines.get(i - 1)) || isHeading(lines.get(i - 1)))
                && fits(lines.get(i + 1))
                && isDivided(lines.get(i + 1))
                && down(i) - down(i - 1) < most
                && down(i + 1) - down(i) < most;
    }

    private double down(int line) {
        return lines.get(line).get(0).down;
    }

    private static double size(List<Word> line) {
        return line.stream().mapToDouble(Word::size).max().orElse(0);
    }

    /** How often the words as they are stored go on from the first column at its right: in each row of a table, once in a newspaper's section. */
    private int crossings(List<List<Word>> region) {
        List<Word> inOrder = inOrder(region);
        int crossings = 0;
        for (int i = 1; i < inOrder.size(); i++) {
            Word before = inOrder.get(i - 1);
            Word word = inOrder.get(i);
            crossings += column(before) == 0 && column(word) > 0 && word.down <= before.down + EDGE ? 1 : 0;
        }
        return crossings;
    }

    /** Whether the first column holds several paragraphs before the words go on at its right. */
    private static boolean isNewspaper(List<List<String>> table, int crossings) {
        long first = table.get(0).stream().filter(cell -> !cell.isEmpty()).count();
        long paragraphs = table.stream()
                .filter(row -> row.size() > 1 && !row.get(0).isEmpty())
                .count();
        return first < 2 || crossings * 2L < paragraphs;
    }

    /** Whether other words are stored between those of a region, as where it cuts a newspaper's columns. */
    private static boolean isTorn(List<List<Word>> region) {
        List<Word> inOrder = inOrder(region);
        return inOrder.get(inOrder.size() - 1).order - inOrder.get(0).order >= inOrder.size();
    }

    private static List<Word> inOrder(List<List<Word>> region) {
        return region.stream()
                .flatMap(List::stream)
                .sorted(Comparator.comparingInt(Word::order))
                .toList();
    }

    private static String text(List<Word> line) {
        StringBuilder text = new StringBuilder();
        line.forEach(word -> text.append(text.isEmpty() ? "" : " ").append(word.text));
        return text.toString();
    }

    private List<List<String>> table(List<List<Word>> region) {
        List<List<String>> rows = new ArrayList<>();
        int from = 0;
        for (int i = 0; i <= region.size(); i++) {
            boolean merged = i > 0 && i < region.size() && !fits(region.get(i));
            boolean heading = i == 0 && !fits(region.get(0));
            if (i == region.size() || merged || heading) {
                rows.addAll(rows(region.subList(from, i)));
                from = i + 1;
            }
            if (merged) {
                rows.add(List.of(text(region.get(i))));
            } else if (heading) {
                rows.add(headings(region.get(0)));
            }
        }
        return rows;
    }

    private List<String> headings(List<Word> line) {
        List<StringBuilder> cells = new ArrayList<>();
        for (int i = 0; i < line.size(); i++) {
            if (i == 0 || line.get(i).left - line.get(i - 1).right > line.get(i).size * gap) {
                cells.add(new StringBuilder());
            }
            StringBuilder cell = cells.get(cells.size() - 1);
            cell.append(cell.isEmpty() ? "" : " ").append(line.get(i).text);
        }
        return cells.stream().map(StringBuilder::toString).toList();
    }

    private List<List<String>> rows(List<List<Word>> region) {
        List<Word> inOrder = inOrder(region);
        boolean cells = false;
        double leading = Double.MAX_VALUE;
        for (int i = 1; i < inOrder.size(); i++) {
            cells |= inOrder.get(i).down < inOrder.get(i - 1).down - inOrder.get(i).size / 2;
        }
        for (int i = 1; i < region.size(); i++) {
            leading = Math.min(
                    leading, region.get(i).get(0).down - region.get(i - 1).get(0).down);
        }
        Rows rows = new Rows(columns.size(), leading);
        for (Word word : cells ? inOrder : region.stream().flatMap(List::stream).toList()) {
            rows.take(word, column(word), cells);
        }
        return rows.done();
    }

    /** Collects the cells of a table word by word. */
    private static final class Rows {
        private final int width;
        private final double leading;
        private final List<List<StringBuilder>> rows = new ArrayList<>();
        private int column = -1;
        private double down;

        Rows(int width, double leading) {
            this.width = width;
            this.leading = leading;
        }

        void take(Word word, int at, boolean cells) {
            double below = word.down - down;
            boolean lower =
                    below > Math.min(Math.max(leading, word.size * LINE), word.size * MOST_LINE) + word.size * WIDER;
            boolean begins = column < 0 || (cells ? at < column || (at == column && lower) : lower);
            if (begins) {
                List<StringBuilder> row = new ArrayList<>();
                for (int i = 0; i < width; i++) {
                    row.add(new StringBuilder());
                }
                rows.add(row);
            }
            StringBuilder cell = rows.get(rows.size() - 1).get(at);
            boolean line = !begins && below > word.size / 2 && at == column;
            if (line && MARK.matcher(word.text).matches()) {
                cell.append('\n').append(word.text);
            } else if (line) {
                PdfDocument.join(cell, word.text);
            } else {
                cell.append(cell.isEmpty() ? "" : " ").append(word.text);
            }
            column = at;
            down = word.down;
        }

        List<List<String>> done() {
            return rows.stream()
                    .map(row -> row.stream().map(StringBuilder::toString).toList())
                    .toList();
        }
    }
}
