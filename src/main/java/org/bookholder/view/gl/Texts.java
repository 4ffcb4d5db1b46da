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

import java.util.LinkedHashMap;
import java.util.Map;
import org.bookholder.view.layout.Face;
import org.bookholder.view.layout.Flow;
import org.jspecify.annotations.Nullable;

/**
 * Keeps texts as textures; each is shaped and drawn once, when it is first needed. The least recently used ones are
 * freed, so that a script of any length takes no more memory than a screenful or two. Confined to the thread of the
 * OpenGL context.
 */
final class Texts implements AutoCloseable {
    /** More texts than are ever on the screen at once. */
    static final int MOST = 160;

    private final Shaper shaper;
    private final Raster raster = new Raster();
    private final Key wanted = new Key();
    private final Map<Key, Text> texts = new LinkedHashMap<>(MOST, 0.75f, true);

    Texts(Shaper shaper) {
        this.shaper = shaper;
    }

    /** The key of a text; one instance is changed in place for look-ups. */
    private static final class Key {
        private String text = "";
        private Face face = Face.READING;
        private long size;
        private boolean rightToLeft;

        Key of(String newText, Face newFace, long newSize, boolean newRightToLeft) {
            text = newText;
            face = newFace;
            size = newSize;
            rightToLeft = newRightToLeft;
            return this;
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Key key
                    && size == key.size
                    && face == key.face
                    && rightToLeft == key.rightToLeft
                    && text.equals(key.text);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * text.hashCode() + face.hashCode()) + Long.hashCode(size);
        }
    }

    /**
     * A text ready to draw.
     *
     * @param texture OpenGL's name of the texture
     * @param width width of the texture in pixels
     * @param height height of the texture in pixels
     * @param baseline baseline in pixels from the top of the texture
     * @param places position of each char
     */
    record Text(int texture, int width, int height, int baseline, Extents places) {
        /** Length in pixels. */
        double advance() {
            return places.length();
        }
    }

    /** The text at a type size in pixels; its first letter decides whether it runs from the left or from the right. */
    Text get(String text, Face face, double size) {
        return get(text, face, size, Flow.rightToLeft(text));
    }

    /** The text at a type size in pixels, running from the left or from the right. */
    Text get(String text, Face face, double size, boolean rightToLeft) {
        long fine = Math.round(size * 64);
        Text known = texts.get(wanted.of(text, face, fine, rightToLeft));
        if (known == null) {
            known = make(text, face, size, rightToLeft);
            texts.put(new Key().of(text, face, fine, rightToLeft), known);
            dropOldest();
        }
        return known;
    }

    /** How many texts are kept. */
    int count() {
        return texts.size();
    }

    /** Frees all textures. */
    @Override
    public void close() {
        texts.values().forEach(text -> glDeleteTextures(text.texture()));
        texts.clear();
        raster.close();
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

    private Text make(String text, Face face, double size, boolean rightToLeft) {
        Shaper.Shaped shaped = shaper.shape(text, face, size, rightToLeft);
        raster.draw(shaped, size);
        int texture = glGenTextures();
        glBindTexture(GL_TEXTURE_2D, texture);
        glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
        glTexImage2D(
                GL_TEXTURE_2D, 0, GL_R8, raster.width(), raster.height(), 0, GL_RED, GL_UNSIGNED_BYTE, raster.pixels());
        glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
        glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
        glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
        glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
        return new Text(texture, raster.width(), raster.height(), raster.baseline(), shaped.places());
    }
}
