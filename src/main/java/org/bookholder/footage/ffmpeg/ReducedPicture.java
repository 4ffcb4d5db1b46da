package org.bookholder.footage.ffmpeg;

import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/** Makes pictures of any size and form small, all to one size and form. Confined to one thread. */
final class ReducedPicture implements AutoCloseable {
    private final int columns;
    private final int rows;
    private final int form;
    private final int method;
    private final BytePointer out;
    private final PointerPointer<BytePointer> planes = new PointerPointer<>(1);
    private final IntPointer stride = new IntPointer(1);
    private @Nullable Source source;
    private @Nullable SwsContext context;

    /** Pictures that one scaler is for. */
    private record Source(int width, int height, int form) {}

    /**
     * Of one size and form.
     *
     * @param form FFmpeg's number of how a pixel is stored, all of it together
     * @param bytes of a pixel
     * @param method swscale's number of how it is made smaller
     */
    ReducedPicture(int columns, int rows, int form, int bytes, int method) {
        this.columns = columns;
        this.rows = rows;
        this.form = form;
        this.method = method;
        out = new BytePointer((long) columns * rows * bytes);
        planes.put(0, out);
        stride.put(0, columns * bytes);
    }

    /**
     * What makes pictures like this one small; null if none can. It is used again as long as pictures are alike. Whether they are is
     * compared here: swscale itself would make one anew for each picture whose form implies its range, such as {@code yuvj420p}.
     */
    @Nullable SwsContext scaler(AVFrame frame) {
        Source now = new Source(frame.width(), frame.height(), frame.format());
        if (!now.equals(source)) {
            free();
            source = now;
            context = swscale.sws_getContext(
                    now.width(), now.height(), now.form(), columns, rows, form, method, null, null, (double[]) null);
        }
        return context;
    }

    /** Makes a picture small with its scaler. */
    void reduce(SwsContext scaler, AVFrame frame, byte[] into) {
        swscale.sws_scale(scaler, frame.data(), frame.linesize(), 0, frame.height(), planes, stride);
        out.position(0).get(into);
    }

    private void free() {
        if (context != null) {
            swscale.sws_freeContext(context);
        }
    }

    @Override
    public void close() {
        free();
        out.close();
        planes.close();
        stride.close();
    }
}
