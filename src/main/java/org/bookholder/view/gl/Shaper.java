package org.bookholder.view.gl;

import static org.lwjgl.util.harfbuzz.HarfBuzz.HB_DIRECTION_LTR;
import static org.lwjgl.util.harfbuzz.HarfBuzz.HB_DIRECTION_RTL;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_add_utf16;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_create;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_destroy;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_get_glyph_infos;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_get_glyph_positions;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_guess_segment_properties;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_set_direction;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_feature_from_string;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_shape;

import java.nio.ByteBuffer;
import java.text.Bidi;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.bookholder.view.layout.Face;
import org.bookholder.view.layout.TextMeasure;
import org.lwjgl.system.MemoryStack;
import org.lwjgl.system.MemoryUtil;
import org.lwjgl.util.harfbuzz.hb_feature_t;
import org.lwjgl.util.harfbuzz.hb_glyph_info_t;
import org.lwjgl.util.harfbuzz.hb_glyph_position_t;

/**
 * Turns text into glyphs and their positions, with kerning, ligatures, runs from right to left (Unicode Standard Annex
 * 9, by the JDK's Bidi), and other fonts for missing characters. A character that no font has is shown as its number.
 */
final class Shaper implements TextMeasure {
    private static final double UNITS = 64;
    private static final double MEASURING_SIZE = 128;

    private final Fonts fonts;
    private final Map<Face, Map<String, Double>> advances = new HashMap<>();

    Shaper(Fonts fonts) {
        this.fonts = fonts;
    }

    /**
     * Text as glyphs.
     *
     * @param glyphs glyphs from left to right
     * @param places position of each char
     */
    record Shaped(List<Glyph> glyphs, Extents places) {
        /** Length in pixels. */
        double advance() {
            return places.length();
        }
    }

    /**
     * A glyph.
     *
     * @param font the font that contains it
     * @param id its number in the font
     * @param x position in pixels from the left
     * @param y height above the baseline in pixels
     */
    record Glyph(Typeface font, int id, double x, double y) {}

    /**
     * A run of chars in one direction and from one font; if it has no font, the numbers of the characters are shown.
     */
    private record Run(int from, int to, boolean rightToLeft, Optional<Typeface> font) {}

    @Override
    public double advance(String text, Face face) {
        return advances.computeIfAbsent(face, f -> new HashMap<>())
                .computeIfAbsent(
                        text, t -> shape(t, face, MEASURING_SIZE, false).advance() / MEASURING_SIZE);
    }

    /** Shapes {@code text} at {@code size} pixels; the text as a whole runs from the left or from the right. */
    Shaped shape(String text, Face face, double size, boolean rightToLeft) {
        List<Glyph> glyphs = new ArrayList<>();
        Extents places = new Extents(text.length());
        double pen = 0;
        for (Run run : runs(text, face, rightToLeft)) {
            Typeface font = run.font().orElseGet(() -> fonts.of(face));
            font.size(size);
            pen = run.font().isPresent()
                    ? shape(text, run, font, face, pen, glyphs, places)
                    : standIn(text, run, font, face, pen, glyphs, places);
        }
        places.finish(pen);
        return new Shaped(glyphs, places);
    }

    /** The runs of a text in visual order, from left to right. */
    private List<Run> runs(String text, Face face, boolean rightToLeft) {
        if (!rightToLeft && !Bidi.requiresBidi(text.toCharArray(), 0, text.length())) {
            return byFont(text, 0, text.length(), false, face);
        }
        Bidi bidi = new Bidi(text, rightToLeft ? Bidi.DIRECTION_RIGHT_TO_LEFT : Bidi.DIRECTION_LEFT_TO_RIGHT);
        byte[] levels = new byte[bidi.getRunCount()];
        Integer[] order = new Integer[levels.length];
        for (int i = 0; i < levels.length; i++) {
            levels[i] = (byte) bidi.getRunLevel(i);
            order[i] = i;
        }
        Bidi.reorderVisually(levels, 0, order, 0, order.length);
        List<Run> runs = new ArrayList<>();
        for (int run : order) {
            boolean back = bidi.getRunLevel(run) % 2 == 1;
            List<Run> parts = new ArrayList<>(byFont(text, bidi.getRunStart(run), bidi.getRunLimit(run), back, face));
            if (back) {
                Collections.reverse(parts);
            }
            runs.addAll(parts);
        }
        return runs;
    }

    /** Splits chars of one direction where another font is needed; in reading order. */
    private List<Run> byFont(String text, int from, int to, boolean rightToLeft, Face face) {
        if (fonts.ownHasAll(face, text, from, to)) {
            return List.of(new Run(from, to, rightToLeft, Optional.of(fonts.of(face))));
        }
        List<Run> runs = new ArrayList<>();
        int start = from;
        Optional<Typeface> font = Optional.empty();
        for (int at = from; at < to; at = clusterEnd(text, at, to)) {
            Optional<Typeface> needed = fonts.of(face, text.substring(at, clusterEnd(text, at, to)));
            boolean goesOn = at > start && needed.isPresent() && needed.equals(font);
            if (!goesOn && at > start) {
                runs.add(new Run(start, at, rightToLeft, font));
                start = at;
            }
            font = needed;
        }
        if (start < to) {
            runs.add(new Run(start, to, rightToLeft, font));
        }
        return runs;
    }

    /** The end of a character with its marks and joiners, which must come from one font. */
    private static int clusterEnd(String text, int from, int to) {
        int end = from + Character.charCount(text.codePointAt(from));
        while (end < to && joins(text.codePointAt(end))) {
            end += Character.charCount(text.codePointAt(end));
        }
        return Math.min(end, to);
    }

    private static boolean joins(int codePoint) {
        int type = Character.getType(codePoint);
        return type == Character.NON_SPACING_MARK
                || type == Character.ENCLOSING_MARK
                || type == Character.COMBINING_SPACING_MARK
                || type == Character.FORMAT;
    }

    private static double shape(
            String text, Run run, Typeface font, Face face, double pen, List<Glyph> glyphs, Extents places) {
        int[] clusters = new int[run.to() - run.from()];
        Arrays.setAll(clusters, i -> run.from() + i);
        String chars = text.substring(run.from(), run.to());
        double end = shape(chars, clusters, run.rightToLeft(), font, face, pen, glyphs, places);
        places.share(run.from(), run.to(), run.rightToLeft());
        return end;
    }

    /** Shows characters as their numbers, each in brackets. */
    private static double standIn(
            String text, Run run, Typeface font, Face face, double pen, List<Glyph> glyphs, Extents places) {
        String number = String.format(Locale.ROOT, "[%04X]", text.codePointAt(run.from()));
        int[] clusters = new int[number.length()];
        Arrays.fill(clusters, run.from());
        double end = shape(number, clusters, false, font, face, pen, glyphs, places);
        places.share(run.from(), run.to(), false);
        return end;
    }

    /** Shapes {@code chars}; {@code clusters} gives the char of the whole text to which each of them belongs. */
    private static double shape(
            String chars,
            int[] clusters,
            boolean rightToLeft,
            Typeface font,
            Face face,
            double pen,
            List<Glyph> glyphs,
            Extents places) {
        ByteBuffer utf16 = MemoryUtil.memUTF16(chars, false);
        long buffer = hb_buffer_create();
        try (MemoryStack stack = MemoryStack.stackPush()) {
            hb_buffer_add_utf16(buffer, utf16, 0, chars.length());
            hb_buffer_set_direction(buffer, rightToLeft ? HB_DIRECTION_RTL : HB_DIRECTION_LTR);
            hb_buffer_guess_segment_properties(buffer);
            hb_shape(font.shaping(), buffer, face == Face.FIGURE ? tabular(stack) : null);
            hb_glyph_info_t.Buffer infos = hb_buffer_get_glyph_infos(buffer);
            hb_glyph_position_t.Buffer spots = hb_buffer_get_glyph_positions(buffer);
            double x = pen;
            int count = infos == null ? 0 : infos.remaining();
            for (int i = 0; i < count && infos != null && spots != null; i++) {
                hb_glyph_position_t spot = spots.get(i);
                double advance = spot.x_advance() / UNITS;
                places.add(clusters[infos.get(i).cluster()], x, x + advance);
                glyphs.add(new Glyph(
                        font, infos.get(i).codepoint(), x + spot.x_offset() / UNITS, spot.y_offset() / UNITS));
                x += advance;
            }
            return x;
        } finally {
            hb_buffer_destroy(buffer);
            MemoryUtil.memFree(utf16);
        }
    }

    /** Digits of equal width, so that a running clock does not jitter. */
    private static hb_feature_t.Buffer tabular(MemoryStack stack) {
        hb_feature_t.Buffer features = hb_feature_t.calloc(1, stack);
        if (!hb_feature_from_string("tnum", features.get(0))) {
            throw new IllegalStateException("HarfBuzz does not know the feature tnum");
        }
        return features;
    }
}
