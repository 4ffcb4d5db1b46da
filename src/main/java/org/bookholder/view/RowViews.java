package org.bookholder.view;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.bookholder.session.LineNotes;
import org.bookholder.view.ViewModel.Mark;
import org.bookholder.view.ViewModel.RowView;
import org.bookholder.view.ViewModel.Stretch;

/** The rows of a picture: those that can be seen, their colours and marks. Pure. */
final class RowViews {
    private final Layout layout;
    private final Moment moment;
    private final Set<Integer> marked = new HashSet<>();

    private RowViews(Layout layout, Moment moment, List<LineNotes> pickups) {
        this.layout = layout;
        this.moment = moment;
        pickups.forEach(notes -> marked.add(notes.line()));
    }

    static List<RowView> of(Layout layout, Geometry geometry, Moment moment, List<LineNotes> pickups) {
        return new RowViews(layout, moment, pickups).visible(geometry);
    }

    private List<RowView> visible(Geometry geometry) {
        double top = moment.motion().at() - geometry.eyeLine();
        double bottom = top + geometry.height() + geometry.pitch();
        List<RowView> views = new ArrayList<>();
        for (int i = layout.rowBelow(top); i < layout.rows().size(); i++) {
            Row row = layout.rows().get(i);
            if (row.middle() > bottom) {
                break;
            }
            views.add(new RowView(row, row.middle() - top, stretches(row), mark(row)));
        }
        return views;
    }

    private Mark mark(Row row) {
        Mark mark = Mark.NONE;
        for (Piece piece : row.pieces()) {
            if (piece.word() == 1
                    && moment.round()
                            .filter(r -> r.clean() && r.line() == piece.line())
                            .isPresent()) {
                return Mark.TICK;
            }
            mark = piece.word() == 1 && marked.contains(piece.line()) ? Mark.DOG_EAR : mark;
        }
        return mark;
    }

    private List<Stretch> stretches(Row row) {
        List<Stretch> stretches = new ArrayList<>();
        int from = 0;
        int rgb = colour(row, row.pieces().get(0));
        for (int i = 1; i < row.pieces().size(); i++) {
            int next = colour(row, row.pieces().get(i));
            if (next != rgb) {
                stretches.add(new Stretch(from, i, rgb));
                from = i;
                rgb = next;
            }
        }
        stretches.add(new Stretch(from, row.pieces().size(), rgb));
        return stretches;
    }

    private int colour(Row row, Piece piece) {
        if (!row.isRead()) {
            boolean past = moment.round().isPresent() || layout.wordAfter(row) < moment.sunk();
            return past ? Palette.DIRECTION_PAST : Palette.DIRECTION;
        }
        int coming = moment.round().map(round -> coming(round, piece)).orElse(Palette.COMING);
        boolean rests = coming == Palette.RESTING;
        return rests ? coming : Palette.mix(coming, Palette.SPOKEN, moment.sunk() - piece.ordinal());
    }

    /** The colour of a word that was not read yet in the pickup round. */
    private static int coming(Round.Shown round, Piece piece) {
        if (piece.line() == round.line()) {
            return Palette.COMING;
        }
        return piece.line() == round.leadIn() ? Palette.LEAD_IN : Palette.RESTING;
    }
}
