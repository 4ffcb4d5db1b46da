package org.bookholder.footage.ffmpeg;

import org.bookholder.footage.Film;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/**
 * Takes the brightness of some of a picture's pixels. They are picked, not averaged, so that noise and means are those
 * of the whole picture. Confined to one thread.
 */
final class LumaSampler implements AutoCloseable {
    private final BytePointer out = new BytePointer((long) Film.Viewer.WIDTH * Film.Viewer.HEIGHT);
    private final PointerPointer<BytePointer> planes = new PointerPointer<>(1);
    private final IntPointer stride = new IntPointer(1);
    private @Nullable SwsContext context;

    LumaSampler() {
        planes.put(0, out);
        stride.put(0, Film.Viewer.WIDTH);
    }

    byte[] luma(AVFrame frame) {
        SwsContext scaler = swscale.sws_getCachedContext(
                context,
                frame.width(),
                frame.height(),
                frame.format(),
                Film.Viewer.WIDTH,
                Film.Viewer.HEIGHT,
                avutil.AV_PIX_FMT_GRAY8,
                swscale.SWS_POINT,
                null,
                null,
                (double[]) null);
        context = scaler;
        byte[] luma = new byte[Film.Viewer.WIDTH * Film.Viewer.HEIGHT];
        if (scaler != null) {
            swscale.sws_scale(scaler, frame.data(), frame.linesize(), 0, frame.height(), planes, stride);
            out.position(0).get(luma);
        }
        return luma;
    }

    @Override
    public void close() {
        if (context != null) {
            swscale.sws_freeContext(context);
        }
        out.close();
        planes.close();
        stride.close();
    }
}
