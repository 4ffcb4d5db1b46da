package org.bookholder.footage.ffmpeg;

import org.bookholder.footage.Film;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.jspecify.annotations.Nullable;

/**
 * Takes the mean colours of a picture's parts, in sRGB. The film's own matrix and range are used; where it names no
 * matrix, that of ITU-R BT.709 from 720 lines on and that of BT.601 below, as players do (common practice). Confined to
 * one thread.
 */
final class ColourSampler implements AutoCloseable {
    private static final int CHANNELS = 3;
    private static final int HIGH_DEFINITION = 720;

    /** One in swscale's numbers of 16 bits after the point. */
    private static final int ONE = 1 << 16;

    private final ReducedPicture reduced = new ReducedPicture(
            Film.Viewer.COLUMNS, Film.Viewer.ROWS, avutil.AV_PIX_FMT_RGB24, CHANNELS, swscale.SWS_AREA);
    private final byte[] means = new byte[Film.Viewer.COLUMNS * Film.Viewer.ROWS * CHANNELS];
    private @Nullable Kind kind;

    /** What a scaler is set to. */
    private record Kind(int width, int height, int form, int matrix, int range) {}

    /** The means of a picture's parts; the array is used again for the next picture. */
    byte[] means(AVFrame frame) {
        SwsContext scaler = reduced.scaler(frame);
        if (scaler == null) {
            // The next scaler is a new one.
            kind = null;
            return means;
        }
        set(scaler, frame);
        reduced.reduce(scaler, frame, means);
        return means;
    }

    private void set(SwsContext scaler, AVFrame frame) {
        int range = frame.color_range() == avutil.AVCOL_RANGE_JPEG ? 1 : 0;
        Kind now = new Kind(frame.width(), frame.height(), frame.format(), matrix(frame), range);
        if (!now.equals(kind)) {
            kind = now;
            // A picture that is RGB already is refused here, and needs no matrix.
            swscale.sws_setColorspaceDetails(
                    scaler,
                    swscale.sws_getCoefficients(now.matrix()),
                    range,
                    swscale.sws_getCoefficients(swscale.SWS_CS_DEFAULT),
                    1,
                    0,
                    ONE,
                    ONE);
        }
    }

    private static int matrix(AVFrame frame) {
        return switch (frame.colorspace()) {
            case avutil.AVCOL_SPC_BT709 -> swscale.SWS_CS_ITU709;
            case avutil.AVCOL_SPC_BT470BG, avutil.AVCOL_SPC_SMPTE170M -> swscale.SWS_CS_ITU601;
            case avutil.AVCOL_SPC_BT2020_NCL, avutil.AVCOL_SPC_BT2020_CL -> swscale.SWS_CS_BT2020;
            default -> frame.height() >= HIGH_DEFINITION ? swscale.SWS_CS_ITU709 : swscale.SWS_CS_ITU601;
        };
    }

    @Override
    public void close() {
        reduced.close();
    }
}
