package org.bookholder.view.gl;

import static org.lwjgl.opengl.GL33C.*;

import java.nio.FloatBuffer;
import org.bookholder.view.cue.Palette;
import org.lwjgl.system.MemoryUtil;

/**
 * Draws texts and soft-edged shapes with OpenGL 3.3. Coordinates are in pixels of the picture, with y pointing down;
 * colours are 0xRRGGBB with a brightness of 0 to 1, which on black is the same as opacity. Confined to the thread of
 * the OpenGL context.
 */
final class Canvas {
    private static final int FLOATS = 8;
    private static final int MOST_VERTICES = 6 * 512;

    /** Texture coordinate that means "no texture". */
    private static final float SOLID = -1;

    private final int program = Shaders.program();
    private final int vertexArray = glGenVertexArrays();
    private final int vertexBuffer = glGenBuffers();
    private final int sizeUniform = glGetUniformLocation(program, "size");
    private final int flipUniform = glGetUniformLocation(program, "flip");
    private final int fadeUniform = glGetUniformLocation(program, "fade");
    private final FloatBuffer vertices = MemoryUtil.memAllocFloat(MOST_VERTICES * FLOATS);
    private int filled;
    private int texture;

    Canvas() {
        glBindVertexArray(vertexArray);
        glBindBuffer(GL_ARRAY_BUFFER, vertexBuffer);
        int stride = FLOATS * Float.BYTES;
        glEnableVertexAttribArray(0);
        glVertexAttribPointer(0, 2, GL_FLOAT, false, stride, 0);
        glEnableVertexAttribArray(1);
        glVertexAttribPointer(1, 2, GL_FLOAT, false, stride, 2L * Float.BYTES);
        glEnableVertexAttribArray(2);
        glVertexAttribPointer(2, 4, GL_FLOAT, false, stride, 4L * Float.BYTES);
    }

    /** Begins a picture on a black background. */
    void begin(int width, int height, boolean mirrored, boolean upsideDown) {
        glViewport(0, 0, width, height);
        glClearColor(channel(Palette.GROUND, 16), channel(Palette.GROUND, 8), channel(Palette.GROUND, 0), 1);
        glClear(GL_COLOR_BUFFER_BIT);
        glUseProgram(program);
        glBindVertexArray(vertexArray);
        glBindBuffer(GL_ARRAY_BUFFER, vertexBuffer);
        glEnable(GL_BLEND);
        glBlendFunc(GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
        glUniform2f(sizeUniform, width, height);
        glUniform2f(flipUniform, mirrored ? -1 : 1, upsideDown ? -1 : 1);
        noFade(height);
    }

    /**
     * Makes everything drawn from now on fade in from {@code top} to {@code topFull} and fade out towards {@code
     * bottom}.
     */
    void fade(double top, double topFull, double bottomFull, double bottom) {
        flush();
        glUniform4f(fadeUniform, (float) top, (float) topFull, (float) bottomFull, (float) bottom);
    }

    /** Ends fading for everything drawn from now on. */
    void noFade(int height) {
        fade(-2, -1, height + 1.0, height + 2.0);
    }

    /** Draws the triangles collected so far. */
    void flush() {
        if (filled > 0) {
            glBindTexture(GL_TEXTURE_2D, texture);
            glBufferData(GL_ARRAY_BUFFER, vertices.flip(), GL_STREAM_DRAW);
            glDrawArrays(GL_TRIANGLES, 0, filled);
            vertices.clear();
            filled = 0;
        }
    }

    /**
     * Draws a text or a part of it.
     *
     * @param x left end of the whole text
     * @param baseline y of its baseline
     * @param from left end of the part, relative to the start of the text
     * @param to right end of the part, likewise
     */
    void text(Texts.Text text, double x, double baseline, double from, double to, int rgb, double light) {
        if (text.texture() != texture) {
            flush();
            texture = text.texture();
        }
        double left = x - Raster.MARGIN;
        double top = baseline - text.baseline();
        double bottom = top + text.height();
        double start = Math.max(0, from + Raster.MARGIN);
        double end = Math.min(text.width(), to + Raster.MARGIN);
        float u0 = (float) (start / text.width());
        float u1 = (float) (end / text.width());
        room(6);
        vertex(left + start, top, u0, 0, rgb, light);
        vertex(left + end, top, u1, 0, rgb, light);
        vertex(left + end, bottom, u1, 1, rgb, light);
        vertex(left + start, top, u0, 0, rgb, light);
        vertex(left + end, bottom, u1, 1, rgb, light);
        vertex(left + start, bottom, u0, 1, rgb, light);
    }

    /** Draws a whole text. */
    void text(Texts.Text text, double x, double baseline, int rgb, double light) {
        text(text, x, baseline, -Raster.MARGIN, text.width(), rgb, light);
    }

    /**
     * Makes room for a triangle with hard edges, whose three corners follow. Shapes build their soft edges from such
     * triangles.
     */
    void triangle() {
        room(3);
    }

    /** Adds a corner of a triangle with its brightness, 0 to 1. */
    void corner(double x, double y, int rgb, double light) {
        vertex(x, y, SOLID, SOLID, rgb, light);
    }

    /** Frees the OpenGL objects that it uses. */
    void close() {
        MemoryUtil.memFree(vertices);
        glDeleteProgram(program);
        glDeleteBuffers(vertexBuffer);
        glDeleteVertexArrays(vertexArray);
    }

    private void room(int more) {
        if (filled + more > MOST_VERTICES) {
            flush();
        }
    }

    private void vertex(double x, double y, float u, float v, int rgb, double light) {
        vertices.put((float) x).put((float) y).put(u).put(v);
        vertices.put(channel(rgb, 16)).put(channel(rgb, 8)).put(channel(rgb, 0)).put((float) light);
        filled++;
    }

    private static float channel(int rgb, int shift) {
        return (rgb >> shift & 255) / 255f;
    }
}
