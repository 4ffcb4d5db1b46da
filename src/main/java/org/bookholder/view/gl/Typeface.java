package org.bookholder.view.gl;

import static org.lwjgl.util.freetype.FreeType.FT_Done_Face;
import static org.lwjgl.util.freetype.FreeType.FT_Get_Char_Index;
import static org.lwjgl.util.freetype.FreeType.FT_LOAD_NO_BITMAP;
import static org.lwjgl.util.freetype.FreeType.FT_LOAD_NO_HINTING;
import static org.lwjgl.util.freetype.FreeType.FT_Set_Char_Size;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_font_destroy;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_ft_font_changed;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_ft_font_create_referenced;
import static org.lwjgl.util.harfbuzz.HarfBuzz.hb_ft_font_set_load_flags;

import java.nio.ByteBuffer;
import java.util.BitSet;
import org.jspecify.annotations.Nullable;
import org.lwjgl.system.MemoryUtil;
import org.lwjgl.util.freetype.FT_Face;

/** An open font file, used for shaping and drawing at one size at a time. Confined to one thread. */
final class Typeface implements AutoCloseable {
    static final int LOAD_FLAGS = FT_LOAD_NO_HINTING | FT_LOAD_NO_BITMAP;

    private static final int UNITS = 64;
    private static final int DOTS_PER_INCH = 72;

    /** The code points below this are the letters of European languages, without separate marks. */
    private static final int COMMON = 0x250;

    private final FT_Face face;
    private final long shaping;
    private final @Nullable ByteBuffer bytes;

    /** Which of the most common characters the font has, as far as looked up. */
    private final BitSet had = new BitSet(COMMON);

    private final BitSet asked = new BitSet(COMMON);

    private long size;

    /** Takes ownership of the face and, if it was opened from memory, of its bytes. */
    Typeface(FT_Face face, @Nullable ByteBuffer bytes) {
        this.face = face;
        this.bytes = bytes;
        shaping = hb_ft_font_create_referenced(face.address());
        hb_ft_font_set_load_flags(shaping, LOAD_FLAGS);
    }

    /** Sets the type size in pixels, to 1/64. */
    void size(double pixels) {
        long wanted = Math.max(UNITS, Math.round(pixels * UNITS));
        if (wanted != size) {
            size = wanted;
            Fonts.check(FT_Set_Char_Size(face, 0, wanted, DOTS_PER_INCH, DOTS_PER_INCH), "FT_Set_Char_Size");
            hb_ft_font_changed(shaping);
        }
    }

    /** Whether it has a glyph for a character. */
    boolean has(int codePoint) {
        if (codePoint >= COMMON) {
            return FT_Get_Char_Index(face, codePoint) != 0;
        }
        if (!asked.get(codePoint)) {
            asked.set(codePoint);
            had.set(codePoint, FT_Get_Char_Index(face, codePoint) != 0);
        }
        return had.get(codePoint);
    }

    FT_Face face() {
        return face;
    }

    /** The HarfBuzz font. */
    long shaping() {
        return shaping;
    }

    @Override
    public void close() {
        hb_font_destroy(shaping);
        Fonts.check(FT_Done_Face(face), "FT_Done_Face");
        if (bytes != null) {
            MemoryUtil.memFree(bytes);
        }
    }
}
