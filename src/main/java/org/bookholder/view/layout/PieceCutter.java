package org.bookholder.view.layout;

import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.model.ScriptWord.Emphasis;

/**
 * Cuts lines and directions into pieces that fit in a row.
 *
 * @param measure measures text
 * @param column length of a row in ems
 * @param english whether the script is in English
 */
record PieceCutter(TextMeasure measure, double column, boolean english) {
    /** Smallest scale at which a long word is set before it is split instead. */
    static final double LEAST_SCALE = 0.7;

    /** The pieces of a line whose first word has this index in the script. */
    List<Piece> line(ScriptLine line, int firstOrdinal) {
        List<Piece> pieces = new ArrayList<>();
        int number = 1;
        for (ScriptWord word : line.words()) {
            String next =
                    number < line.words().size() ? line.words().get(number).written() : "";
            ShownText shown = ShownText.of(word.written(), english);
            double bond = RowBreakRules.bond(word.written(), next);
            double width = measure.advance(shown.text(), Face.READING);
            Piece whole = new Piece(
                    shown.text(),
                    line.number(),
                    number,
                    firstOrdinal + number - 1,
                    width,
                    word.spoken().get(0).size(),
                    shown.pause().isEmpty() ? bond : RowBreakRules.NEVER,
                    false,
                    rule(word.emphasis()));
            if (width * LEAST_SCALE <= column) {
                pieces.add(whole);
            } else {
                pieces.addAll(cut(whole));
            }
            if (!shown.pause().isEmpty()) {
                pieces.add(pause(whole, shown.pause(), bond));
            }
            number++;
        }
        return pieces;
    }

    /** The pieces of a direction; {@code scale} is its type size relative to that of the text to be read. */
    List<Piece> direction(String text, double scale) {
        List<Piece> pieces = new ArrayList<>();
        String[] words = text.strip().split("\\s+", -1);
        for (int i = 0; i < words.length; i++) {
            String word = words[i];
            double bond = RowBreakRules.bond(word, i + 1 < words.length ? words[i + 1] : "");
            double width = measure.advance(word, Face.DIRECTION) * scale;
            Piece whole = new Piece(word, 0, 0, -1, width, 0, bond, false, 0);
            if (width <= column) {
                pieces.add(whole);
            } else {
                pieces.addAll(cut(whole));
            }
        }
        return pieces;
    }

    private Piece pause(Piece after, String mark, double bond) {
        double width = measure.advance(mark, Face.READING);
        return new Piece(mark, after.line(), after.word(), after.ordinal(), width, 0, bond, true, 0);
    }

    private static int rule(Emphasis emphasis) {
        return switch (emphasis) {
            case NONE -> 0;
            case LIGHT -> 1;
            case STRONG -> 2;
        };
    }

    /** Splits into parts of about equal length, so that no short remainder is left. */
    private List<Piece> cut(Piece whole) {
        int parts = (int) Math.ceil(whole.width() / (0.85 * column));
        double each = whole.width() / parts;
        double perChar = whole.width() / whole.text().length();
        BreakIterator characters = BreakIterator.getCharacterInstance(Locale.ROOT);
        characters.setText(whole.text());
        List<Piece> cut = new ArrayList<>();
        int from = 0;
        while (from < whole.text().length()) {
            int wanted = from + Math.max(1, (int) Math.ceil(each / perChar));
            int to = wanted >= whole.text().length() ? whole.text().length() : characters.following(wanted - 1);
            cut.add(part(whole, from, to, perChar));
            from = to;
        }
        return cut;
    }

    private static Piece part(Piece whole, int from, int to, double perChar) {
        return new Piece(
                whole.text().substring(from, to),
                whole.line(),
                whole.word(),
                whole.ordinal(),
                (to - from) * perChar,
                from == 0 ? whole.spoken() : 0,
                to == whole.text().length() ? whole.bond() : 0,
                false,
                whole.rule());
    }
}
