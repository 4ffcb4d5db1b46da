package org.bookholder.footage.ffmpeg;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.footage.Channels;
import org.bookholder.problem.ProblemException;
import org.bytedeco.ffmpeg.avutil.AVChannelLayout;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swresample;
import org.bytedeco.ffmpeg.swresample.SwrContext;
import org.bytedeco.javacpp.PointerPointer;
import org.bytedeco.javacpp.ShortPointer;

/**
 * Turns decoded sound of any kind into 16 bit at a given rate: into one channel, or every channel for itself. In a mix all count alike, whatever loudspeaker they are
 * named for: recorders put a microphone on each, and the usual mix leaves out what it takes for the channel of low effects. Confined to
 * one thread.
 */
final class Mixdown implements AutoCloseable {
    private final SwrContext resampler;
    private final int rate;
    private final int sourceRate;

    private final int width;

    private Mixdown(SwrContext resampler, int rate, int sourceRate, int width) {
        this.resampler = resampler;
        this.width = width;
        this.rate = rate;
        this.sourceRate = sourceRate;
    }

    /**
     * A mixdown for frames like {@code frame}.
     *
     * @param heard the channels that become one; empty to keep every channel, sample by sample beside the others
     */
    static Mixdown of(AVFrame frame, int rate, Optional<Channels> heard, Path path) throws ProblemException {
        SwrContext resampler = new SwrContext(null);
        int channels = frame.ch_layout().nb_channels();
        try (AVChannelLayout mono = new AVChannelLayout()) {
            avutil.av_channel_layout_default(mono, 1);
            int made = swresample.swr_alloc_set_opts2(
                    resampler,
                    heard.isPresent() ? mono : frame.ch_layout(),
                    avutil.AV_SAMPLE_FMT_S16,
                    rate,
                    frame.ch_layout(),
                    frame.format(),
                    frame.sample_rate(),
                    0,
                    null);
            if (made >= 0 && heard.isPresent()) {
                made = swresample.swr_set_matrix(resampler, heard.get().weights(channels), channels);
            }
            int begun = made < 0 ? made : swresample.swr_init(resampler);
            if (begun < 0) {
                throw new ProblemException(
                        "its sound cannot be turned into one channel (" + OpenFile.reason(begun) + ")",
                        path.toString(),
                        "convert its sound to AAC or PCM");
            }
        }
        return new Mixdown(resampler, rate, frame.sample_rate(), heard.isPresent() ? 1 : channels);
    }

    /** How many channels come out. */
    int width() {
        return width;
    }

    /** How many samples are on their way through, at the rate that comes out. */
    long waiting() {
        return swresample.swr_get_delay(resampler, rate);
    }

    /** The samples that a frame sets free. */
    short[] mix(AVFrame frame) {
        int room = (int) ((long) frame.nb_samples() * rate / sourceRate + waiting() + 64);
        try (ShortPointer out = new ShortPointer((long) room * width);
                PointerPointer<ShortPointer> channels = new PointerPointer<>(1)) {
            channels.put(0, out);
            return taken(
                    out, swresample.swr_convert(resampler, channels, room, frame.extended_data(), frame.nb_samples()));
        }
    }

    /** The samples that were still on their way. */
    short[] rest() {
        int room = (int) waiting() + 64;
        try (ShortPointer out = new ShortPointer((long) room * width);
                PointerPointer<ShortPointer> channels = new PointerPointer<>(1)) {
            channels.put(0, out);
            return taken(out, swresample.swr_convert(resampler, channels, room, (PointerPointer<?>) null, 0));
        }
    }

    private short[] taken(ShortPointer out, int count) {
        short[] samples = new short[Math.max(0, count) * width];
        out.get(samples);
        return samples;
    }

    @Override
    public void close() {
        swresample.swr_free(resampler);
    }
}
