package org.bookholder.view.gl;

import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_add_utf16;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_create;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_destroy;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_get_glyph_infos;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_get_glyph_positions;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_buffer_guess_segment_properties;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_feature_from_string;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_shape;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.view.Face;
import org.bookholder.view.TextMeasure;
import org.lwjgl.system.MemoryStack;
import org.lwjgl.system.MemoryUtil;
import org.lwjgl.util.harfbuzz.hb_feature_t;
import org.lwjgl.util.harfbuzz.hb_glyph_info_t;
import org.lwjgl.util.harfbuzz.hb_glyph_position_t;

/** Turns text into glyphs with their places: kerning, ligatures, and another font where one lacks a character. */
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
     * @param glyphs in the order of drawing
     * @param starts where each char begins
     */
    record Shaped(List<Glyph> glyphs, Starts starts) {
        /** Length in pixels. */
        double advance() {
            return starts.end();
        }
    }

    /**
     * A glyph.
     *
     * @param font the font that has it
     * @param id its number in the font
     * @param x where it is drawn, in pixels from the left
     * @param y above the baseline in pixels
     */
    record Glyph(Typeface font, int id, double x, double y) {}

    @Override
    public double advance(String text, Face face) {
        return advances.computeIfAbsent(face, f -> new HashMap<>())
                .computeIfAbsent(text, t -> shape(t, face, MEASURING_SIZE).advance() / MEASURING_SIZE);
    }

    /** Shapes {@code text} at {@code size} pixels. */
    Shaped shape(String text, Face face, double size) {
        List<Glyph> glyphs = new ArrayList<>();
        Starts starts = new Starts(text.length());
        double pen = 0;
        int from = 0;
        while (from < text.length()) {
            Typeface font = fontAt(text, from, face);
            int to = from + Character.charCount(text.codePointAt(from));
            while (to < text.length() && (joins(text.codePointAt(to)) || fontAt(text, to, face) == font)) {
                to += Character.charCount(text.codePointAt(to));
            }
            font.size(size);
            pen = run(text, from, to, font, face, pen, glyphs, starts);
            from = to;
        }
        starts.finish(pen);
        return new Shaped(glyphs, starts);
    }

    private Typeface fontAt(String text, int index, Face face) {
        int codePoint = text.codePointAt(index);
        return Character.isWhitespace(codePoint) ? fonts.of(face) : fonts.of(face, codePoint);
    }

    /** Marks and joiners belong to the character before them, whatever font that is in. */
    private static boolean joins(int codePoint) {
        int type = Character.getType(codePoint);
        return type == Character.NON_SPACING_MARK
                || type == Character.ENCLOSING_MARK
                || type == Character.COMBINING_SPACING_MARK
                || type == Character.FORMAT;
    }

    private static double run(
            String text, int from, int to, Typeface font, Face face, double pen, List<Glyph> glyphs, Starts starts) {
        ByteBuffer utf16 = MemoryUtil.memUTF16(text, false);
        long buffer = hb_buffer_create();
        try (MemoryStack stack = MemoryStack.stackPush()) {
            hb_buffer_add_utf16(buffer, utf16, from, to - from);
            hb_buffer_guess_segment_properties(buffer);
            hb_shape(font.shaping(), buffer, face == Face.FIGURE ? tabular(stack) : null);
            hb_glyph_info_t.Buffer infos = hb_buffer_get_glyph_infos(buffer);
            hb_glyph_position_t.Buffer places = hb_buffer_get_glyph_positions(buffer);
            double x = pen;
            int count = infos == null ? 0 : infos.remaining();
            for (int i = 0; i < count && infos != null && places != null; i++) {
                hb_glyph_position_t place = places.get(i);
                starts.begin(infos.get(i).cluster(), x);
                glyphs.add(new Glyph(
                        font, infos.get(i).codepoint(), x + place.x_offset() / UNITS, place.y_offset() / UNITS));
                x += place.x_advance() / UNITS;
            }
            return x;
        } finally {
            hb_buffer_destroy(buffer);
            MemoryUtil.memFree(utf16);
        }
    }

    /** Figures of one width, so that a running clock does not dance. */
    private static hb_feature_t.Buffer tabular(MemoryStack stack) {
        hb_feature_t.Buffer features = hb_feature_t.calloc(1, stack);
        if (!hb_feature_from_string("tnum", features.get(0))) {
            throw new IllegalStateException("HarfBuzz does not know the feature tnum");
        }
        return features;
    }
}
