package org.bookholder.view.gl;

import static org.lwjgl.util.freetype.FreeType.FT_Load_Glyph;
import static org.lwjgl.util.freetype.FreeType.FT_Outline_Translate;
import static org.lwjgl.util.freetype.FreeType.FT_RENDER_MODE_NORMAL;
import static org.lwjgl.util.freetype.FreeType.FT_Render_Glyph;

import java.nio.ByteBuffer;
import org.lwjgl.system.MemoryUtil;
import org.lwjgl.util.freetype.FT_Bitmap;
import org.lwjgl.util.freetype.FT_GlyphSlot;

/**
 * Draws shaped text as a coverage bitmap, 0 to 255 for each pixel. Glyphs are placed along the row to 1/64 pixel. Holds
 * one text at a time, in native memory that is reused for the next. Confined to one thread.
 */
final class Raster implements AutoCloseable {
    /** Pixels of empty margin at the left and right. */
    static final int MARGIN = 6;

    private static final double ASCENT = 1.08;
    private static final double DESCENT = 0.36;
    private static final int UNITS = 64;

    private int width;
    private int height;
    private int baseline;
    private ByteBuffer pixels = MemoryUtil.memAlloc(1 << 16);

    /** Draws {@code shaped} text at a type size and replaces the previous text. */
    void draw(Shaper.Shaped shaped, double size) {
        baseline = (int) Math.ceil(ASCENT * size);
        height = baseline + (int) Math.ceil(DESCENT * size);
        width = Math.max(1, (int) Math.ceil(shaped.advance())) + 2 * MARGIN;
        if (pixels.capacity() < width * height) {
            pixels = MemoryUtil.memRealloc(pixels, width * height);
        }
        pixels.clear().limit(width * height);
        MemoryUtil.memSet(pixels, 0);
        for (Shaper.Glyph glyph : shaped.glyphs()) {
            glyph.font().size(size);
            draw(glyph);
        }
    }

    /** In pixels. */
    int width() {
        return width;
    }

    /** In pixels. */
    int height() {
        return height;
    }

    /** The baseline as a row of pixels, counted from the top. */
    int baseline() {
        return baseline;
    }

    /** The coverage, row by row; valid until the next text is drawn. */
    ByteBuffer pixels() {
        return pixels;
    }

    @Override
    public void close() {
        MemoryUtil.memFree(pixels);
    }

    /** Draws a glyph; leaves it out if its font cannot draw it. */
    private void draw(Shaper.Glyph glyph) {
        FT_GlyphSlot slot = glyph.font().face().glyph();
        if (slot == null || FT_Load_Glyph(glyph.font().face(), glyph.id(), Typeface.LOAD_FLAGS) != 0) {
            return;
        }
        long x = Math.round((glyph.x() + MARGIN) * UNITS);
        FT_Outline_Translate(slot.outline(), Math.floorMod(x, UNITS), Math.round(glyph.y() * UNITS));
        if (FT_Render_Glyph(slot, FT_RENDER_MODE_NORMAL) == 0) {
            int left = (int) Math.floorDiv(x, (long) UNITS) + slot.bitmap_left();
            copy(slot.bitmap(), left, baseline - slot.bitmap_top());
        }
    }

    private void copy(FT_Bitmap bitmap, int left, int top) {
        int pitch = bitmap.pitch();
        ByteBuffer source = bitmap.buffer(Math.abs(pitch) * bitmap.rows());
        if (source == null) {
            return;
        }
        for (int row = Math.max(0, -top); row < bitmap.rows() && top + row < height; row++) {
            for (int column = Math.max(0, -left); column < bitmap.width() && left + column < width; column++) {
                int at = (top + row) * width + left + column;
                int cover = source.get(row * pitch + column) & 255;
                pixels.put(at, (byte) Math.max(pixels.get(at) & 255, cover));
            }
        }
    }
}
