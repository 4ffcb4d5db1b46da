package org.bookholder.footage.ffmpeg;

import java.nio.file.Path;
import org.bookholder.problem.ProblemException;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swresample;
import org.bytedeco.ffmpeg.swresample.SwrContext;
import org.bytedeco.javacpp.FloatPointer;
import org.bytedeco.javacpp.PointerPointer;

/**
 * Turns decoded sound of any kind into floating-point samples of each channel, at its own rate. Confined to one thread.
 */
final class ChannelSplitter implements AutoCloseable {
    private final SwrContext converter;
    private final int channels;

    private ChannelSplitter(SwrContext converter, int channels) {
        this.converter = converter;
        this.channels = channels;
    }

    /** A separator for frames like {@code frame}. */
    static ChannelSplitter of(AVFrame frame, Path path) throws ProblemException {
        SwrContext converter = new SwrContext(null);
        int made = swresample.swr_alloc_set_opts2(
                converter,
                frame.ch_layout(),
                avutil.AV_SAMPLE_FMT_FLTP,
                frame.sample_rate(),
                frame.ch_layout(),
                frame.format(),
                frame.sample_rate(),
                0,
                null);
        int begun = made < 0 ? made : swresample.swr_init(converter);
        if (begun < 0) {
            throw new ProblemException(
                    "its sound cannot be taken apart (" + OpenFile.reason(begun) + ")",
                    path.toString(),
                    "export it again with AAC sound");
        }
        return new ChannelSplitter(converter, frame.ch_layout().nb_channels());
    }

    float[][] channels(AVFrame frame) {
        int room = frame.nb_samples();
        FloatPointer[] planes = new FloatPointer[channels];
        try (PointerPointer<FloatPointer> out = new PointerPointer<>(channels)) {
            for (int i = 0; i < channels; i++) {
                planes[i] = new FloatPointer(room);
                out.put(i, planes[i]);
            }
            int count = Math.max(0, swresample.swr_convert(converter, out, room, frame.extended_data(), room));
            float[][] samples = new float[channels][count];
            for (int i = 0; i < channels; i++) {
                planes[i].get(samples[i]);
                planes[i].close();
            }
            return samples;
        }
    }

    @Override
    public void close() {
        swresample.swr_free(converter);
    }
}
