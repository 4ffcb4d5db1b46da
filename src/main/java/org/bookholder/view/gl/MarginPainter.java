package org.bookholder.view.gl;

import java.util.Arrays;
import java.util.List;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.view.Frame;
import org.bookholder.view.Frame.Caption;
import org.bookholder.view.Frame.Footlights;
import org.bookholder.view.Frame.LessonThread;
import org.bookholder.view.Frame.Reed;
import org.bookholder.view.Frame.Spot;
import org.bookholder.view.cue.Palette;
import org.bookholder.view.layout.Face;
import org.bookholder.view.layout.Geometry;

/** Draws everything around the text: footlights, reed, dog-ears, the lesson's thread, numbers and words. */
final class MarginPainter {
    private static final List<Spot> SPOTS = List.of(Spot.values());
    private static final int BLADE_POINTS = 25;
    private static final double BLADE_BEND = 1.25;

    private final Shapes shapes;
    private final LabelPainter labels;
    private final WordsPainter words;
    private final CaptionRoom room;
    private final OpeningPainter opening;
    private final double[] tickPoints = new double[6];
    private final double[] tickWidths = new double[3];
    private final double[] bladePoints = new double[2 * BLADE_POINTS];
    private final double[] bladeWidths = new double[BLADE_POINTS];

    MarginPainter(Shapes shapes, LabelPainter labels) {
        this.shapes = shapes;
        this.labels = labels;
        room = new CaptionRoom(labels);
        words = new WordsPainter(labels, room);
        opening = new OpeningPainter(shapes, labels);
    }

    void paint(Frame view) {
        Geometry geometry = view.geometry();
        double light = 1 - (view.page().isPresent() ? view.page().get().light() : 0);
        if (light > 0) {
            footlights(view.footlights(), geometry, light);
            if (view.reed().isPresent()) {
                reed(view.reed().get(), geometry, light);
            }
        }
        opening.paint(view, light * view.opening().light(), room.headLeftEnd(view));
        if (view.thread().isPresent()) {
            thread(view.thread().get(), geometry);
        }
        for (int i = 0; i < SPOTS.size(); i++) {
            Caption caption = view.caption(SPOTS.get(i));
            if (caption != null) {
                caption(caption, view);
            }
        }
        words.paint(view);
    }

    /**
     * The height at which rows have faded out completely towards the bottom of the picture, above the words shown
     * there.
     */
    double footTop(Frame view) {
        return view.geometry().footTop() - words.height(view);
    }

    /** Draws a folded corner of the page with its tip at the top left: the lit flap and its shadow. */
    void dogEar(double x, double y, double size, double light) {
        shapes.polygon(x, y).to(x + size, y + size).to(x, y + size).fill(Palette.DOG_EAR, light);
        shapes.polygon(x, y + size)
                .to(x + size, y + size)
                .to(x + 0.42 * size, y + 1.3 * size)
                .to(x, y + 1.3 * size)
                .fill(Palette.DOG_EAR_SHADE, light);
    }

    /** Draws a tick whose angle is at {@code x} and {@code middle}. */
    void tick(double x, double middle, double size, double light) {
        tickPoints[0] = x - 0.1 * size;
        tickPoints[1] = middle;
        tickPoints[2] = x + 0.3 * size;
        tickPoints[3] = middle + 0.45 * size;
        tickPoints[4] = x + 1.1 * size;
        tickPoints[5] = middle - 0.6 * size;
        Arrays.fill(tickWidths, Math.max(2, 0.27 * size));
        shapes.ribbon(Palette.TICK, light, tickPoints, tickWidths);
    }

    private void footlights(Footlights kind, Geometry geometry, double light) {
        double em = geometry.em();
        double length = Math.min(0.62 * em, 0.28 * geometry.columnLeft());
        double left = geometry.columnLeft() - Math.min(0.55 * em, 0.12 * geometry.columnLeft()) - length;
        double right = geometry.columnRight() + 0.95 * em;
        double thick = Math.max(3, 0.075 * em);
        footlight(kind, left, length, thick, geometry.eyeLine(), light);
        footlight(kind, right, length, thick, geometry.eyeLine(), light);
    }

    private void footlight(Footlights kind, double x, double length, double thick, double y, double light) {
        switch (kind) {
            case BARS -> shapes.bar(x, x + length, y, thick, Palette.FOOTLIGHT, light);
            case OUTLINES -> {
                shapes.bar(x, x + length, y, 2.2 * thick, Palette.FOOTLIGHT, 0.85 * light);
                double rim = Math.max(1.6, 0.42 * thick);
                shapes.bar(x + rim, x + length - rim, y, 2.2 * thick - 2 * rim, Palette.GROUND, 1);
            }
            case DOTS -> {
                for (int i = 0; i < 3; i++) {
                    double radius = 0.8 * thick;
                    shapes.disc(x + radius + i * (length - 2 * radius) / 2, y, radius, Palette.FOOTLIGHT, light);
                }
            }
            case HIDDEN -> {
                return;
            }
        }
    }

    /** Draws a blade fixed at its left end: straight and level when on pace, bent up when fast, bent down when slow. */
    private void reed(Reed reed, Geometry geometry, double light) {
        double em = geometry.em();
        double length = CaptionRoom.reedLength(geometry);
        double x = CaptionRoom.reedLeft(geometry);
        double y = geometry.eyeLine();
        double thick = Math.max(5, 0.2 * em);
        rest(x, y, length, em, light);
        double px = x;
        double py = y;
        double step = length / (BLADE_POINTS - 1);
        for (int i = 0; i < BLADE_POINTS; i++) {
            double share = i / (BLADE_POINTS - 1.0);
            bladePoints[2 * i] = px;
            bladePoints[2 * i + 1] = py;
            bladeWidths[i] = Math.max(0.4, thick * Math.pow(1 - share, 0.75));
            double angle = reed.lean() * BLADE_BEND * Math.sqrt(share);
            px += step * Math.cos(angle);
            py -= step * Math.sin(angle);
        }
        shapes.ribbon(reed.rgb(), light, bladePoints, bladeWidths);
        shapes.disc(x, y, 0.5 * thick, reed.rgb(), light);
        if (!room.paceFits(reed.figure(), geometry)) {
            return;
        }
        double figureY = y + Math.min(1.25 * em, length) + 0.9 * geometry.small();
        labels.left(reed.figure(), Face.FIGURE, geometry.small(), x - thick / 2, figureY, Palette.FIGURE, light);
    }

    /** Draws the blade's position when the reading is on pace. */
    private void rest(double x, double y, double length, double em, double light) {
        double thick = Math.max(2, 0.028 * em);
        double left = x + length + Math.min(0.12 * em, 0.1 * length);
        double right = x + length + Math.min(0.34 * em, 0.26 * length);
        shapes.bar(left, right, y, thick, Palette.FIGURE, 0.8 * light);
    }

    private void thread(LessonThread thread, Geometry geometry) {
        double left = geometry.columnLeft();
        double length = geometry.columnWidth();
        double y = geometry.threadLine();
        double thick = Math.max(2, 0.0022 * geometry.height());
        shapes.bar(left, left + length, y, thick, Palette.HAIRLINE, 1);
        if (thread.read() > 0) {
            shapes.bar(left, left + Math.max(thick, length * thread.read()), y, 1.6 * thick, Palette.FIGURE, 1);
        }
        double size = 0.36 * geometry.small();
        for (int i = 0; i < thread.pickups().size(); i++) {
            dogEar(left + thread.pickups().get(i) * length, y - 1.9 * size, size, 1);
        }
    }

    private void caption(Caption caption, Frame view) {
        Geometry geometry = view.geometry();
        double near = geometry.fieldLeft();
        double far = geometry.fieldRight();
        double size = geometry.small();
        int rgb = caption.rgb();
        String text = caption.text();
        switch (caption.spot()) {
            case HEAD_LEFT -> labels.left(text, Face.FIGURE, size, near, geometry.headLine(), rgb, caption.light());
            case FOOT_LEFT ->
                labels.left(room.footLeft(view), Face.FIGURE, size, near, geometry.footLine(), rgb, caption.light());
            case HEAD_RIGHT -> {
                double ear = 0.62 * size;
                dogEar(far - ear, geometry.headLine() - 0.62 * ear, ear, caption.light());
                labels.right(text, Face.FIGURE, size, far - 1.6 * ear, geometry.headLine(), rgb, caption.light());
            }
            case FOOT_RIGHT -> {
                if (room.footFits(view)) {
                    double left = labels.right(text, Face.FIGURE, size, far, geometry.footLine(), rgb, caption.light());
                    rest(view, left - 0.75 * size, geometry.footLine(), 0.3 * size, rgb);
                }
            }
            case HEAD_MIDDLE -> {
                if (room.headFits(view)) {
                    labels.centred(
                            text, Face.FIGURE, size, geometry.width() / 2.0, geometry.headLine(), rgb, caption.light());
                }
            }
            case COUNT, BESIDE, MESSAGE -> {
                return;
            }
        }
    }

    /** Draws a ring when a break is coming, half a disc when it is due, a full disc when it is overdue. */
    private void rest(Frame view, double x, double y, double radius, int rgb) {
        double rim = Math.max(1.6, 0.16 * radius);
        shapes.disc(x, y, radius, rgb, 1);
        if (view.rest() == Urgency.OVERDUE) {
            return;
        }
        shapes.disc(x, y, radius - rim, Palette.GROUND, 1);
        if (view.rest() == Urgency.DUE) {
            shapes.lowerDisc(x, y, radius - rim / 2, 0.5, rgb, 1);
        }
    }
}
