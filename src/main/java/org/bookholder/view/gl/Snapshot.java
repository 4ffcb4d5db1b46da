package org.bookholder.view.gl;

import static org.lwjgl.opengl.GL33C.GL_PACK_ALIGNMENT;
import static org.lwjgl.opengl.GL33C.GL_RGB;
import static org.lwjgl.opengl.GL33C.GL_UNSIGNED_BYTE;
import static org.lwjgl.opengl.GL33C.glPixelStorei;
import static org.lwjgl.opengl.GL33C.glReadPixels;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import org.bookholder.problem.ProblemException;
import org.lwjgl.stb.STBImageWrite;
import org.lwjgl.system.MemoryUtil;

/** A copy of a picture that was drawn. */
public final class Snapshot {
    private static final int CHANNELS = 3;

    private final int width;
    private final int height;
    private final byte[] rgb;

    private Snapshot(int width, int height, byte[] rgb) {
        this.width = width;
        this.height = height;
        this.rgb = rgb;
    }

    /** Reads the picture that was drawn last and has not been shown yet. */
    static Snapshot read(int width, int height) {
        ByteBuffer pixels = MemoryUtil.memAlloc(width * height * CHANNELS);
        try {
            glPixelStorei(GL_PACK_ALIGNMENT, 1);
            glReadPixels(0, 0, width, height, GL_RGB, GL_UNSIGNED_BYTE, pixels);
            byte[] rgb = new byte[width * height * CHANNELS];
            for (int row = 0; row < height; row++) {
                pixels.get((height - 1 - row) * width * CHANNELS, rgb, row * width * CHANNELS, width * CHANNELS);
            }
            return new Snapshot(width, height, rgb);
        } finally {
            MemoryUtil.memFree(pixels);
        }
    }

    /** Width in pixels. */
    public int width() {
        return width;
    }

    /** Height in pixels. */
    public int height() {
        return height;
    }

    /** The colour of a pixel, 0xRRGGBB. */
    public int at(int x, int y) {
        int i = (y * width + x) * CHANNELS;
        return (rgb[i] & 255) << 16 | (rgb[i + 1] & 255) << 8 | (rgb[i + 2] & 255);
    }

    /** Writes the picture as a PNG file. */
    public void write(Path file) throws ProblemException {
        ByteBuffer pixels = MemoryUtil.memAlloc(rgb.length);
        try {
            pixels.put(rgb).flip();
            if (!STBImageWrite.stbi_write_png(file.toString(), width, height, CHANNELS, pixels, width * CHANNELS)) {
                throw new ProblemException(
                        "the picture cannot be written", file.toString(), "choose a folder that can be written to");
            }
        } finally {
            MemoryUtil.memFree(pixels);
        }
    }
}
