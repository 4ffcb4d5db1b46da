package org.bookholder.script.normalize;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Moves of chess in the notation of the FIDE Laws of Chess (Appendix C): "Nf3", "Qxf7#", "exd5", "e8=Q+", "O-O-O". What is said of
 * them is from memory.
 */
final class ChessRule implements NormalizationRule {
    private static final Pattern MOVE = Pattern.compile(
            "(?:([KQRBN])([a-h]?[1-8]?)|([a-h])(?=x))?(x|(?<=[KQRBN][a-h][1-8])[-\u2013])?([a-h][1-8])(?:=?([QRBN])(?![\\w]))?([+#]?)[!?]{0,2}"
                    + END);

    /** A square by itself is said as its letter and number, whatever stands there. */
    private static final Pattern SQUARE = Pattern.compile("[a-h][1-8][!?.,;:)]*");

    private static final Pattern CASTLING = Pattern.compile("(O)-O(-O)?([+#]?)[!?]{0,2}" + END);
    private static final Map<String, String> PIECES =
            Map.of("K", "king", "Q", "queen", "R", "rook", "B", "bishop", "N", "knight");

    private final NumberWords numbers;

    ChessRule(NumberWords numbers) {
        this.numbers = numbers;
    }

    @Override
    public boolean mayBegin(char first) {
        return (first >= 'a' && first <= 'h') || "KQRBNO".indexOf(first) >= 0;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher castling = NormalizationRule.match(CASTLING, text, from, to);
        if (castling != null) {
            SpokenForms letters = castling.group(2) == null
                    ? SpokenForms.of(
                            "o o", "oh oh", "castles", "castle", "castles kingside", "castle kingside", "kingside")
                    : SpokenForms.of("o o o", "oh oh oh", "castles queenside", "castle queenside", "queenside", "long");
            return new SpokenSpan(castling.end(), letters.then(check(castling.group(3))));
        }
        Matcher move = NormalizationRule.match(MOVE, text, from, to);
        if (move == null || SQUARE.matcher(move.group()).matches()) {
            return null;
        }
        return new SpokenSpan(move.end(), move(move).or(letters(move)));
    }

    private SpokenForms move(Matcher m) {
        SpokenForms piece = m.group(1) == null
                ? m.group(3) == null ? SpokenForms.SILENT : SpokenForms.of(m.group(3), m.group(3) + " pawn")
                : SpokenForms.of(PIECES.getOrDefault(m.group(1), "")).then(square(m.group(2)));
        boolean takes = "x".equals(m.group(4));
        SpokenForms between = takes
                ? SpokenForms.of("takes", "takes on", "captures", "captures on")
                : m.group(1) == null
                        ? SpokenForms.SILENT
                        : m.group(4) == null ? SpokenForms.of("", "to") : SpokenForms.of("to", "");
        SpokenForms forms = piece.then(between).then(square(m.group(5)));
        if (m.group(6) != null) {
            String promoted = PIECES.getOrDefault(m.group(6), "");
            forms = forms.then("equals " + promoted, promoted, "promotes to " + promoted, "becomes " + promoted);
        }
        return forms.then(check(m.group(7)));
    }

    private SpokenForms square(String written) {
        SpokenForms forms = SpokenForms.SILENT;
        for (int i = 0; i < written.length(); i++) {
            char c = written.charAt(i);
            forms = forms.then(
                    Character.isDigit(c)
                            ? numbers.cardinal(Character.digit(c, 10)).preferred()
                            : SpokenForms.of(String.valueOf(c)));
        }
        return forms;
    }

    private static SpokenForms check(String sign) {
        return switch (sign) {
            case "+" -> SpokenForms.of("check", "with check", "plus", "");
            case "#" -> SpokenForms.of("mate", "checkmate", "");
            default -> SpokenForms.SILENT;
        };
    }

    /** Read as it stands, "n f three", "e x a one"; a sign that means something is said. */
    private SpokenForms letters(Matcher m) {
        String who = m.group(1) == null ? m.group(3) : m.group(1);
        if (who == null || m.group(6) != null || !m.group(7).isEmpty()) {
            return SpokenForms.NONE;
        }
        SpokenForms between = m.group(4) == null
                ? SpokenForms.SILENT
                : m.group(4).equals("x") ? SpokenForms.of("x") : SpokenForms.of("", "to", "dash");
        return SpokenForms.of(Typography.lower(who))
                .then(m.group(2) == null ? SpokenForms.SILENT : square(m.group(2)))
                .then(between)
                .then(square(m.group(5)));
    }
}
