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
 * Shaped text as a picture of coverage, 0 to 255 a pixel. Glyphs are placed to 1/64 pixel along the row.
 */
final class Raster {
    /** Pixels of empty margin at the left and right. */
    static final int MARGIN = 6;

    private static final double ASCENT = 1.08;
    private static final double DESCENT = 0.36;
    private static final int UNITS = 64;

    private final int width;
    private final int height;
    private final int baseline;
    private final byte[] pixels;

    private Raster(int width, int height, int baseline) {
        this.width = width;
        this.height = height;
        this.baseline = baseline;
        pixels = new byte[width * height];
    }

    /** Draws {@code shaped} text of a type size. */
    static Raster of(Shaper.Shaped shaped, double size) {
        int baseline = (int) Math.ceil(ASCENT * size);
        int height = baseline + (int) Math.ceil(DESCENT * size);
        int width = Math.max(1, (int) Math.ceil(shaped.advance())) + 2 * MARGIN;
        Raster raster = new Raster(width, height, baseline);
        for (Shaper.Glyph glyph : shaped.glyphs()) {
            glyph.font().size(size);
            raster.draw(glyph);
        }
        return raster;
    }

    /** In pixels. */
    int width() {
        return width;
    }

    /** In pixels. */
    int height() {
        return height;
    }

    /** The row of pixels on which the text stands, from the top. */
    int baseline() {
        return baseline;
    }

    /** The coverage, row by row, copied into native memory that the caller frees. */
    ByteBuffer copy() {
        return MemoryUtil.memAlloc(pixels.length).put(pixels).flip();
    }

    /** A glyph that its font cannot draw is left out. */
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
                pixels[at] = (byte) Math.max(pixels[at] & 255, cover);
            }
        }
    }
}
