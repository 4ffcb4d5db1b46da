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
 * One picture of the reading window, ready to be drawn. Lengths in pixels, y downwards, colours 0xRRGGBB. Each window
 * has one frame; each picture overwrites the one before, so that drawing creates no garbage. Read what you need before
 * the scene advances. Confined to one thread.
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

    /** Makes an empty picture; {@code opening} is kept and read for every picture. */
    Frame(Geometry geometry, Opening opening) {
        this.geometry = geometry;
        this.opening = opening;
    }

    /** Whether anything has changed since the last call. */
    public boolean takeChanged() {
        boolean was = changed;
        changed = false;
        return was;
    }

    /** The geometry of the picture. */
    public Geometry geometry() {
        return geometry;
    }

    /** The rows that are at least partly visible, as a list. */
    public List<RowView> rows() {
        return Collections.unmodifiableList(rows.subList(0, rowCount));
    }

    /** Number of rows that are at least partly visible. */
    public int rowCount() {
        return rowCount;
    }

    /** A visible row; 0 is the topmost. */
    public RowView row(int index) {
        return rows.get(Objects.checkIndex(index, rowCount));
    }

    /** How far above the first visible row that is read the rows before it reach, as a direction or speaker; 0 without any. */
    public double shownBefore() {
        for (int i = 0; i < rowCount; i++) {
            if (rows.get(i).row().isRead()) {
                return rows.get(i).middle() - rows.get(0).middle();
            }
        }
        return 0;
    }

    /** Opacity of the rows, 0 to 1; less than 1 during a long jump and under a page. */
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

    /** The lesson's progress line at the bottom, if it is shown. */
    public Optional<LessonThread> thread() {
        return thread;
    }

    /** Figures and words at the edges, as a list. */
    public List<Caption> captions() {
        return List.copyOf(captions.values());
    }

    /** The caption at a spot; null if there is none. */
    public @Nullable Caption caption(Spot spot) {
        return captions.get(spot);
    }

    /** How urgent a break is. */
    public Urgency rest() {
        return rest;
    }

    /** What is shown before the lesson begins. */
    public Opening opening() {
        return opening;
    }

    /** The list shown in place of the script, if there is one. */
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

    /** Prepares row {@code index}, from 0, to be filled in. */
    RowView fillRow(int index, Row row) {
        if (index == rows.size()) {
            rows.add(new RowView(row));
        }
        return rows.get(index);
    }

    /** Ends the filling of rows; {@code different} says whether any of them has changed. */
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

    /** Sets the caption at a spot; an empty text removes it. */
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

    /** Notes whether the opening has changed. */
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

        /** The row of the layout. */
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

        /** Number of stretches of one colour; together they cover all pieces. */
        public int stretchCount() {
            return count;
        }

        /** End of a stretch: one past its last piece, where the next begins. */
        public int end(int stretch) {
            return ends[stretch];
        }

        /** The colour of a stretch. */
        public int rgb(int stretch) {
            return colours[stretch];
        }

        /** The stretches from left to right, as a list. */
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

        /** Ends the filling of this row; returns whether it has changed. */
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
        /** Dots: the place is lost and being searched for. */
        DOTS,
        /** Not shown. */
        HIDDEN
    }

    /** The pace. */
    public static final class Reed {
        private double lean;
        private int rgb;
        private String figure = "";

        private Reed() {}

        /** Position of the blade, -1 slow to 1 fast. */
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
     * The lesson's progress line.
     *
     * @param read fraction of the script before the reading position
     * @param pickups positions of the pickups, as fractions of the script
     */
    public record LessonThread(double read, List<Double> pickups) {
        /** Copies the list. */
        public LessonThread {
            pickups = List.copyOf(pickups);
        }
    }

    /** Where a caption is placed. */
    public enum Spot {
        /** Top left. */
        HEAD_LEFT,
        /** Top centre. */
        HEAD_MIDDLE,
        /** Top right. */
        HEAD_RIGHT,
        /** Bottom left. */
        FOOT_LEFT,
        /** Bottom right. */
        FOOT_RIGHT,
        /** Large, to the right of the row being read. */
        COUNT,
        /** Below the right footlight. */
        BESIDE,
        /** Centred above the progress line. */
        MESSAGE
    }

    /**
     * A few words at an edge.
     *
     * @param text the words
     * @param spot its place
     * @param rgb its colour
     * @param light opacity, 0 to 1
     */
    public record Caption(String text, Spot spot, int rgb, double light) {}
}
