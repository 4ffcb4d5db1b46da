package org.bookholder.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.view.cue.Opening;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.layout.Row;
import org.bookholder.view.page.PageView;
import org.jspecify.annotations.Nullable;

/**
 * One picture of the reading window, to be drawn as it is. Lengths in pixels, y downwards, colours 0xRRGGBB. There is one for
 * each window, and each picture is filled in over the one before, so that drawing leaves nothing behind to be collected: take
 * from it what is needed before time goes on. Confined to one thread.
 */
public final class Frame {
    private Geometry geometry;
    private final List<RowView> rows = new ArrayList<>();
    private int rowCount;
    private double textLight;
    private Footlights footlights = Footlights.OUTLINES;
    private final Reed reed = new Reed();
    private final Optional<Reed> shownReed = Optional.of(reed);
    private boolean reedShown;
    private Optional<LessonThread> thread = Optional.empty();
    private final Map<Spot, Caption> captions = new EnumMap<>(Spot.class);
    private Urgency rest = Urgency.NONE;
    private final Opening opening;
    private double openingLight;
    private double openingLevel;
    private String openingText = "";
    private Optional<PageView> page = Optional.empty();
    private boolean mirrored;
    private boolean upsideDown;
    private boolean changed = true;

    /** An empty picture; what is said before the lesson stays the same object. */
    Frame(Geometry geometry, Opening opening) {
        this.geometry = geometry;
        this.opening = opening;
    }

    /** Whether something has changed since this was asked last. */
    public boolean takeChanged() {
        boolean was = changed;
        changed = false;
        return was;
    }

    /** Where things stand. */
    public Geometry geometry() {
        return geometry;
    }

    /** The rows that are at least partly visible, as a list. */
    public List<RowView> rows() {
        return Collections.unmodifiableList(rows.subList(0, rowCount));
    }

    /** How many rows are at least partly visible. */
    public int rowCount() {
        return rowCount;
    }

    /** One of them, from the top, from 0. */
    public RowView row(int index) {
        return rows.get(Objects.checkIndex(index, rowCount));
    }

    /** Light of the rows, 0 to 1; less than 1 in a long jump and beneath a page. */
    public double textLight() {
        return textLight;
    }

    /** The marks at the eye-line. */
    public Footlights footlights() {
        return footlights;
    }

    /** The pace, if it is shown. */
    public Optional<Reed> reed() {
        return reedShown ? shownReed : Optional.empty();
    }

    /** The lesson as a line at the foot, if it is shown. */
    public Optional<LessonThread> thread() {
        return thread;
    }

    /** Figures and words at the edges, as a list. */
    public List<Caption> captions() {
        return List.copyOf(captions.values());
    }

    /** What is said at a place, if anything is. */
    public @Nullable Caption caption(Spot spot) {
        return captions.get(spot);
    }

    /** How near a break is. */
    public Urgency rest() {
        return rest;
    }

    /** What is said before the lesson is begun. */
    public Opening opening() {
        return opening;
    }

    /** The list in place of the script, if one is shown. */
    public Optional<PageView> page() {
        return page;
    }

    /** Whether left and right are swapped. */
    public boolean mirrored() {
        return mirrored;
    }

    /** Whether top and bottom are swapped. */
    public boolean upsideDown() {
        return upsideDown;
    }

    void setGround(Geometry now, boolean swapped, boolean turned) {
        changed |= !now.equals(geometry) || swapped != mirrored || turned != upsideDown;
        geometry = now;
        mirrored = swapped;
        upsideDown = turned;
    }

    void setText(double light, Footlights marks) {
        changed |= light != textLight || marks != footlights;
        textLight = light;
        footlights = marks;
    }

    /** The picture's row number {@code index}, from 0, ready to be filled in. */
    RowView fillRow(int index, Row row) {
        if (index == rows.size()) {
            rows.add(new RowView(row));
        }
        return rows.get(index);
    }

    /** Ends the rows; {@code different} says whether one of them has changed. */
    void endRows(int count, boolean different) {
        changed |= different || count != rowCount;
        rowCount = count;
    }

    void setReed(boolean shown, double lean, int rgb, String figure) {
        changed |= shown != reedShown || (shown && !reed.shows(lean, rgb, figure));
        reedShown = shown;
        reed.lean = lean;
        reed.rgb = rgb;
        reed.figure = figure;
    }

    @SuppressWarnings("ReferenceEquality")
    boolean threadShows(double read, List<Double> pickups) {
        return thread.isPresent() && thread.get().read == read && thread.get().pickups == pickups;
    }

    void setThread(Optional<LessonThread> now) {
        changed |= !now.equals(thread);
        thread = now;
    }

    /** Says something at a place; nothing if the text is empty. */
    void setCaption(Spot spot, String text, int rgb, double light) {
        Caption old = captions.get(spot);
        if (text.isEmpty() || light <= 0) {
            changed |= old != null;
            captions.remove(spot);
        } else if (old == null || !old.text.equals(text) || old.rgb != rgb || old.light != light) {
            changed = true;
            captions.put(spot, new Caption(text, spot, rgb, light));
        }
    }

    void setRest(Urgency now) {
        changed |= now != rest;
        rest = now;
    }

    /** Looks at what is said before the lesson. */
    void lookAtOpening() {
        changed |= opening.light() != openingLight;
        changed |= openingLight > 0 && Math.abs(opening.level() - openingLevel) > 0.002;
        changed |= openingLight > 0 && !opening.sound().equals(openingText);
        openingLevel = changed ? opening.level() : openingLevel;
        openingLight = opening.light();
        openingText = opening.sound();
    }

    void setPage(Optional<PageView> now) {
        changed |= !now.equals(page);
        page = now;
    }

    /** A row on the screen. */
    public static final class RowView {
        private Row row;
        private double middle;
        private Mark mark = Mark.NONE;
        private int count;
        private int[] ends = new int[4];
        private int[] colours = new int[4];
        private boolean changed = true;

        private RowView(Row row) {
            this.row = row;
        }

        /** What it holds. */
        public Row row() {
            return row;
        }

        /** Middle of its capitals. */
        public double middle() {
            return middle;
        }

        /** What stands beside it. */
        public Mark mark() {
            return mark;
        }

        /** How many stretches of one colour it has, together all of its pieces. */
        public int stretchCount() {
            return count;
        }

        /** Where a stretch ends: one past its last piece; the next begins there. */
        public int end(int stretch) {
            return ends[stretch];
        }

        /** The colour of a stretch. */
        public int rgb(int stretch) {
            return colours[stretch];
        }

        /** Colours from left to right, as a list. */
        public List<Stretch> stretches() {
            List<Stretch> stretches = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                stretches.add(new Stretch(i == 0 ? 0 : ends[i - 1], ends[i], colours[i]));
            }
            return stretches;
        }

        @SuppressWarnings("ReferenceEquality")
        void begin(Row now, double at, Mark beside) {
            changed = now != row || at != middle || beside != mark;
            row = now;
            middle = at;
            mark = beside;
        }

        void setStretch(int index, int end, int rgb) {
            if (index == ends.length) {
                ends = Arrays.copyOf(ends, 2 * index);
                colours = Arrays.copyOf(colours, 2 * index);
            }
            changed |= index >= count || ends[index] != end || colours[index] != rgb;
            ends[index] = end;
            colours[index] = rgb;
        }

        /** Ends the row; says whether it has changed. */
        boolean finish(int stretches) {
            changed |= stretches != count;
            count = stretches;
            return changed;
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
        DOTS,
        /** Left out. */
        HIDDEN
    }

    /** The pace. */
    public static final class Reed {
        private double lean;
        private int rgb;
        private String figure = "";

        private Reed() {}

        /** Where the blade stands, -1 slow to 1 fast. */
        public double lean() {
            return lean;
        }

        /** Its colour. */
        public int rgb() {
            return rgb;
        }

        /** Words per minute, empty if none is known. */
        public String figure() {
            return figure;
        }

        private boolean shows(double at, int colour, String words) {
            return at == lean && colour == rgb && words.equals(figure);
        }
    }

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
}
