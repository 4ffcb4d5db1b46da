package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** "Bb5": a bishop's move or a chord of B flat; the move first where another move is in the text. From memory. */
final class BishopOrFlatRule implements NormalizationRule {
    private static final Pattern EITHER = Pattern.compile("Bb[1-8][!?]{0,2}" + END);
    private static final Pattern MOVE = Pattern.compile(
            "(?<!\\w)(?:[KQRN][a-h]?[1-8]?x?[a-h][1-8]|Bx?[ac-h][1-8]|[Ba-h]x[a-h][1-8]|O-O|\\d{1,3}\\.\\s?[a-h][1-8])(?!\\w)");

    private final NormalizationRule moves;
    private final NormalizationRule chords;

    BishopOrFlatRule(NormalizationRule moves, NormalizationRule chords) {
        this.moves = moves;
        this.chords = chords;
    }

    @Override
    public boolean mayBegin(char first) {
        return first == 'B';
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher either = NormalizationRule.match(EITHER, text, from, to);
        SpokenSpan move = either == null ? null : moves.at(text, from, to);
        SpokenSpan chord = move == null ? null : chords.at(text, from, to);
        if (move == null || chord == null) {
            return null;
        }
        SpokenForms forms = MOVE.matcher(text).find()
                ? move.forms().or(chord.forms())
                : chord.forms().or(move.forms());
        return new SpokenSpan(move.end(), forms);
    }
}
