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
 * Takes the mean colours of a picture's parts, in sRGB. The film's own matrix and range are used; where it names no
 * matrix, that of ITU-R BT.709 from 720 lines on and that of BT.601 below, as players do (common practice). Confined to
 * one thread.
 */
final class ColourSampler implements AutoCloseable {
    private static final int CHANNELS = 3;
    private static final int SIZE = Film.Viewer.COLUMNS * Film.Viewer.ROWS * CHANNELS;
    private static final int HIGH_DEFINITION = 720;

    /** One in swscale's numbers of 16 bits after the point. */
    private static final int ONE = 1 << 16;

    private final BytePointer out = new BytePointer((long) SIZE);
    private final PointerPointer<BytePointer> planes = new PointerPointer<>(1);
    private final IntPointer stride = new IntPointer(1);
    private final byte[] means = new byte[SIZE];
    private @Nullable SwsContext context;
    private int matrix = -1;
    private int range = -1;

    ColourSampler() {
        planes.put(0, out);
        stride.put(0, Film.Viewer.COLUMNS * CHANNELS);
    }

    /** The means of a picture's parts; the array is used again for the next picture. */
    byte[] means(AVFrame frame) {
        SwsContext scaler = swscale.sws_getCachedContext(
                context,
                frame.width(),
                frame.height(),
                frame.format(),
                Film.Viewer.COLUMNS,
                Film.Viewer.ROWS,
                avutil.AV_PIX_FMT_RGB24,
                swscale.SWS_AREA,
                null,
                null,
                (double[]) null);
        if (scaler == null) {
            context = null;
            return means;
        }
        boolean changed = context == null || !context.equals(scaler);
        context = scaler;
        setMatrix(scaler, frame, changed);
        swscale.sws_scale(scaler, frame.data(), frame.linesize(), 0, frame.height(), planes, stride);
        out.position(0).get(means);
        return means;
    }

    private void setMatrix(SwsContext scaler, AVFrame frame, boolean anew) {
        int newMatrix = matrix(frame);
        int newRange = frame.color_range() == avutil.AVCOL_RANGE_JPEG ? 1 : 0;
        if (anew || newMatrix != matrix || newRange != range) {
            IntPointer from = swscale.sws_getCoefficients(newMatrix);
            IntPointer to = swscale.sws_getCoefficients(swscale.SWS_CS_DEFAULT);
            // A picture that is RGB already is refused here, and needs no matrix.
            swscale.sws_setColorspaceDetails(scaler, from, newRange, to, 1, 0, ONE, ONE);
            matrix = newMatrix;
            range = newRange;
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
        if (context != null) {
            swscale.sws_freeContext(context);
        }
        out.close();
        planes.close();
        stride.close();
    }
}
