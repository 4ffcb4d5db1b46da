package org.bookholder.view.gl;

import org.bookholder.view.Frame;
import org.bookholder.view.Frame.Caption;
import org.bookholder.view.Frame.Spot;
import org.bookholder.view.layout.Face;
import org.bookholder.view.layout.Geometry;
import org.jspecify.annotations.Nullable;

/**
 * Decides which captions fit where they belong. Figures are as large as the distance asks for, so on a small screen some
 * of them have to move: the sound's verdict and the advice to above the thread, the pace to the time left.
 */
final class CaptionRoom {
    /** Least distance between two captions in a row, in multiples of their size. */
    private static final double APART = 0.9;

    /** Room for the disc before the advice, in multiples of its size. */
    private static final double DISC = 1.1;

    private final LabelPainter labels;
    private String joined = "";
    private String joinedPace = "";
    private String joinedLeft = "";

    CaptionRoom(LabelPainter labels) {
        this.labels = labels;
    }

    /** Length of the reed. */
    static double reedLength(Geometry geometry) {
        return Math.min(1.45 * geometry.em(), 0.3 * geometry.columnLeft());
    }

    /** Left end of the reed: near the text. */
    static double reedLeft(Geometry geometry) {
        double least = Math.min(geometry.margin(), 0.2 * geometry.columnLeft());
        double middle = 0.3 * geometry.columnLeft() - reedLength(geometry) / 2;
        return Math.max(geometry.fieldLeft(), Math.max(least, middle));
    }

    /** Whether the pace fits between the reed's left end and the text. */
    boolean paceFits(String pace, Geometry geometry) {
        double room = geometry.columnLeft() - 0.3 * geometry.small() - reedLeft(geometry);
        return labels.length(pace, Face.FIGURE, geometry.small()) <= room;
    }

    /** What is drawn at the bottom left: the time left, and the pace if it does not fit beside the text. */
    String footLeft(Frame view) {
        Caption left = view.caption(Spot.FOOT_LEFT);
        String time = left == null ? "" : left.text();
        if (view.reed().isEmpty() || view.page().isPresent()) {
            return time;
        }
        String pace = view.reed().get().figure();
        if (pace.isEmpty() || time.isEmpty() || paceFits(pace, view.geometry())) {
            return time;
        }
        if (!pace.equals(joinedPace) || !time.equals(joinedLeft)) {
            joinedPace = pace;
            joinedLeft = time;
            joined = pace + "  ·  " + time;
        }
        return joined;
    }

    /** Whether the advice fits beside the time left. */
    boolean footFits(Frame view) {
        Geometry geometry = view.geometry();
        double rest = length(view.caption(Spot.FOOT_RIGHT), geometry);
        double left = labels.length(footLeft(view), Face.FIGURE, geometry.small());
        double apart = (left > 0 ? APART + DISC : DISC) * geometry.small();
        return rest == 0 || left + apart + rest <= geometry.fieldRight() - geometry.fieldLeft();
    }

    /** Whether the words in the middle of the head fit between those at its ends. */
    boolean headFits(Frame view) {
        Geometry geometry = view.geometry();
        double half = length(view.caption(Spot.HEAD_MIDDLE), geometry) / 2 + APART * geometry.small();
        double middle = geometry.width() / 2.0;
        double right = length(view.caption(Spot.HEAD_RIGHT), geometry);
        double rightEnd = geometry.fieldRight() - (right > 0 ? right + geometry.small() : 0);
        return middle - half >= headLeftEnd(view) && middle + half <= rightEnd;
    }

    /** Right end of the words at the head's left. */
    double headLeftEnd(Frame view) {
        return view.geometry().fieldLeft() + length(view.caption(Spot.HEAD_LEFT), view.geometry());
    }

    private double length(@Nullable Caption caption, Geometry geometry) {
        return caption == null ? 0 : labels.length(caption.text(), Face.FIGURE, geometry.small());
    }
}
