package org.bookholder.view.gl;

import static org.lwjgl.opengl.GL33C.GL_CLAMP_TO_EDGE;
import static org.lwjgl.opengl.GL33C.GL_LINEAR;
import static org.lwjgl.opengl.GL33C.GL_R8;
import static org.lwjgl.opengl.GL33C.GL_RED;
import static org.lwjgl.opengl.GL33C.GL_TEXTURE_2D;
import static org.lwjgl.opengl.GL33C.GL_TEXTURE_MAG_FILTER;
import static org.lwjgl.opengl.GL33C.GL_TEXTURE_MIN_FILTER;
import static org.lwjgl.opengl.GL33C.GL_TEXTURE_WRAP_S;
import static org.lwjgl.opengl.GL33C.GL_TEXTURE_WRAP_T;
import static org.lwjgl.opengl.GL33C.GL_UNPACK_ALIGNMENT;
import static org.lwjgl.opengl.GL33C.GL_UNSIGNED_BYTE;
import static org.lwjgl.opengl.GL33C.glBindTexture;
import static org.lwjgl.opengl.GL33C.glDeleteTextures;
import static org.lwjgl.opengl.GL33C.glGenTextures;
import static org.lwjgl.opengl.GL33C.glPixelStorei;
import static org.lwjgl.opengl.GL33C.glTexImage2D;
import static org.lwjgl.opengl.GL33C.glTexParameteri;

import java.nio.ByteBuffer;
import java.util.LinkedHashMap;
import java.util.Map;
import org.bookholder.view.Face;
import org.lwjgl.system.MemoryUtil;

/**
 * Texts as textures, each shaped and drawn once when it is first needed. Those used longest ago are let go, so that a
 * script of any length takes no more than a screenful or two. Confined to the thread of the OpenGL context.
 */
final class Texts {
    /** More than are on the screen at any time. */
    static final int MOST = 160;

    private final Shaper shaper;
    private final Map<Key, Text> texts = new LinkedHashMap<>(MOST, 0.75f, true);

    Texts(Shaper shaper) {
        this.shaper = shaper;
    }

    private record Key(String text, Face face, long size) {}

    /**
     * A text ready to draw.
     *
     * @param texture its name
     * @param width of the texture in pixels
     * @param height of the texture in pixels
     * @param baseline in pixels from the texture's top
     * @param starts where each char begins
     */
    record Text(int texture, int width, int height, int baseline, Starts starts) {
        /** Length in pixels. */
        double advance() {
            return starts.end();
        }
    }

    /** The text at a type size in pixels. */
    Text get(String text, Face face, double size) {
        Key key = new Key(text, face, Math.round(size * 64));
        Text known = texts.get(key);
        if (known == null) {
            known = make(text, face, size);
            texts.put(key, known);
            dropOldest();
        }
        return known;
    }

    /** How many are kept. */
    int count() {
        return texts.size();
    }

    /** Lets go of all. */
    void clear() {
        texts.values().forEach(text -> glDeleteTextures(text.texture()));
        texts.clear();
    }

    private void dropOldest() {
        while (texts.size() > MOST) {
            Key oldest = texts.keySet().iterator().next();
            Text dropped = texts.remove(oldest);
            if (dropped != null) {
                glDeleteTextures(dropped.texture());
            }
        }
    }

    private Text make(String text, Face face, double size) {
        Shaper.Shaped shaped = shaper.shape(text, face, size);
        Raster raster = Raster.of(shaped, size);
        ByteBuffer pixels = raster.copy();
        try {
            int texture = glGenTextures();
            glBindTexture(GL_TEXTURE_2D, texture);
            glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
            glTexImage2D(GL_TEXTURE_2D, 0, GL_R8, raster.width(), raster.height(), 0, GL_RED, GL_UNSIGNED_BYTE, pixels);
            glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
            glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
            glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
            glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
            return new Text(texture, raster.width(), raster.height(), raster.baseline(), shaped.starts());
        } finally {
            MemoryUtil.memFree(pixels);
        }
    }
}
