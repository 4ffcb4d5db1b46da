package org.bookholder.view;

import java.util.List;
import org.bookholder.view.Frame.Mark;
import org.bookholder.view.Frame.RowView;
import org.bookholder.view.cue.Palette;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.layout.Layout;
import org.bookholder.view.layout.Piece;
import org.bookholder.view.layout.Row;
import org.bookholder.view.page.PickupLines;

/** Fills in the visible rows of a picture with their colours and marks. Confined to one thread. */
final class RowViews {
    /** Rows are placed in steps of this fraction of a pixel, so that the text really comes to rest. */
    private static final double FINENESS = 64;

    private final Frame view;
    private final PickupLines pickups;
    private final AnimationState moment;

    RowViews(Frame view, PickupLines pickups, AnimationState moment) {
        this.view = view;
        this.pickups = pickups;
        this.moment = moment;
    }

    /** Fills in the rows; folded corners are set only if {@code marks} is true. */
    void fill(Layout layout, Geometry geometry, boolean marks) {
        double top = moment.motion.at() - geometry.eyeLine();
        double bottom = top + geometry.height() + geometry.pitch();
        List<Row> rows = layout.rows();
        boolean changed = false;
        int count = 0;
        for (int i = layout.rowBelow(top); i < rows.size() && rows.get(i).middle() <= bottom; i++) {
            Row row = rows.get(i);
            RowView shown = view.fillRow(count, row);
            shown.begin(row, Math.rint((row.middle() - top) * FINENESS) / FINENESS, mark(row, marks));
            changed |= colour(shown, layout);
            count++;
        }
        view.endRows(count, changed);
    }

    private Mark mark(Row row, boolean marks) {
        Mark mark = Mark.NONE;
        for (int i = 0; i < row.pieces().size(); i++) {
            Piece piece = row.pieces().get(i);
            if (piece.word() == 1 && moment.round.ticked() == piece.line()) {
                return Mark.TICK;
            }
            mark = marks && piece.word() == 1 && pickups.has(piece.line()) ? Mark.DOG_EAR : mark;
        }
        return mark;
    }

    /** Joins neighbouring pieces of one colour into a stretch; returns whether the row has changed. */
    private boolean colour(RowView shown, Layout layout) {
        Row row = shown.row();
        int count = 0;
        int rgb = colour(row, row.pieces().get(0), layout);
        for (int i = 1; i < row.pieces().size(); i++) {
            int next = colour(row, row.pieces().get(i), layout);
            if (next != rgb) {
                shown.setStretch(count, i, rgb);
                count++;
                rgb = next;
            }
        }
        shown.setStretch(count, row.pieces().size(), rgb);
        return shown.finish(count + 1);
    }

    private int colour(Row row, Piece piece, Layout layout) {
        boolean round = moment.round.isOn();
        if (!row.isRead()) {
            boolean past = round || layout.wordAfter(row) < moment.sunk;
            return past ? Palette.DIRECTION_PAST : Palette.DIRECTION;
        }
        int coming = round ? comingInRound(piece) : Palette.COMING;
        boolean rests = coming == Palette.RESTING;
        if (piece.pause() && !rests) {
            return Palette.mix(Palette.DIRECTION, Palette.DIRECTION_PAST, moment.sunk - piece.ordinal());
        }
        return rests ? coming : Palette.mix(coming, Palette.SPOKEN, moment.sunk - piece.ordinal());
    }

    /** The colour of a word not read yet in the pickup round. */
    private int comingInRound(Piece piece) {
        if (piece.line() == moment.round.line()) {
            return Palette.COMING;
        }
        return piece.line() == moment.round.leadIn() ? Palette.LEAD_IN : Palette.RESTING;
    }
}
