package org.bookholder.footage.ffmpeg;

import org.bookholder.footage.Film;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;

/**
 * Takes the brightness of some of a picture's pixels. They are picked, not averaged, so that noise and means are those
 * of the whole picture. Confined to one thread.
 */
final class LumaSampler implements AutoCloseable {
    private final ReducedPicture reduced =
            new ReducedPicture(Film.Viewer.WIDTH, Film.Viewer.HEIGHT, avutil.AV_PIX_FMT_GRAY8, 1, swscale.SWS_POINT);

    byte[] luma(AVFrame frame) {
        byte[] luma = new byte[Film.Viewer.WIDTH * Film.Viewer.HEIGHT];
        SwsContext scaler = reduced.scaler(frame);
        if (scaler != null) {
            reduced.reduce(scaler, frame, luma);
        }
        return luma;
    }

    @Override
    public void close() {
        reduced.close();
    }
}
