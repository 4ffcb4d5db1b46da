package org.bookholder.view;

import java.util.List;
import java.util.Optional;
import org.bookholder.fatigue.BreakAdvice.Urgency;

/**
 * One picture of the reading window, to be drawn as it is. Lengths in pixels, y downwards, colours 0xRRGGBB.
 *
 * @param geometry where things stand
 * @param rows the rows that are at least partly visible
 * @param textLight light of the rows, 0 to 1; less than 1 in a long jump and beneath a page
 * @param footlights the marks at the eye-line
 * @param reed the pace, if it is shown
 * @param thread the lesson as a line at the foot, if it is shown
 * @param captions figures and words at the edges
 * @param rest how near a break is
 * @param opening what is said before the lesson is begun
 * @param page the list in place of the script, if one is shown
 * @param mirrored whether left and right are swapped
 * @param upsideDown whether top and bottom are swapped
 */
public record ViewModel(
        Geometry geometry,
        List<RowView> rows,
        double textLight,
        Footlights footlights,
        Optional<Reed> reed,
        Optional<LessonThread> thread,
        List<Caption> captions,
        Urgency rest,
        Opening opening,
        Optional<PageView> page,
        boolean mirrored,
        boolean upsideDown) {
    /** Copies the lists. */
    public ViewModel {
        rows = List.copyOf(rows);
        captions = List.copyOf(captions);
    }

    /**
     * A row on the screen.
     *
     * @param row what it holds
     * @param middle middle of its capitals
     * @param stretches colours from left to right, together all of its pieces
     * @param mark what stands beside it
     */
    public record RowView(Row row, double middle, List<Stretch> stretches, Mark mark) {
        /** Copies the list. */
        public RowView {
            stretches = List.copyOf(stretches);
        }
    }

    /** What stands beside a row. */
    public enum Mark {
        /** Nothing. */
        NONE,
        /** A folded corner: a line that begins in the row is a pickup. */
        DOG_EAR,
        /** A tick: the line was read clean in the pickup round. */
        TICK
    }

    /**
     * Neighbouring pieces of one colour.
     *
     * @param from first piece, from 0
     * @param to one past the last piece
     * @param rgb colour
     */
    public record Stretch(int from, int to, int rgb) {}

    /** How the marks at the eye-line look. */
    public enum Footlights {
        /** Two short bars: the reading is followed. */
        BARS,
        /** Outlines: the take is held, or none is rolling. */
        OUTLINES,
        /** Dots: the place is looked for. */
        DOTS
    }

    /**
     * The pace.
     *
     * @param lean where the blade stands, -1 slow to 1 fast
     * @param rgb its colour
     * @param figure words per minute, empty if none is known
     */
    public record Reed(double lean, int rgb, String figure) {}

    /**
     * The lesson as a line.
     *
     * @param read share of the script before the reading position
     * @param pickups where pickups lie, as shares of the script
     */
    public record LessonThread(double read, List<Double> pickups) {
        /** Copies the list. */
        public LessonThread {
            pickups = List.copyOf(pickups);
        }
    }

    /** Where a caption stands. */
    public enum Spot {
        /** At the head, left. */
        HEAD_LEFT,
        /** At the head, in the middle. */
        HEAD_MIDDLE,
        /** At the head, right. */
        HEAD_RIGHT,
        /** At the foot, left. */
        FOOT_LEFT,
        /** At the foot, right. */
        FOOT_RIGHT,
        /** Large, right of the row being read. */
        COUNT,
        /** Beneath the right footlight. */
        BESIDE,
        /** Above the thread, in the middle. */
        MESSAGE
    }

    /**
     * A few words at an edge.
     *
     * @param text the words
     * @param spot where
     * @param rgb colour
     * @param light 0 to 1
     */
    public record Caption(String text, Spot spot, int rgb, double light) {}

    /**
     * A page on the screen.
     *
     * @param page what it holds
     * @param scroll how far it is moved up
     * @param light 0 to 1
     */
    public record PageView(Page page, double scroll, double light) {}
}
