package org.bookholder.footage.ffmpeg;

import java.nio.ShortBuffer;
import java.util.Arrays;
import java.util.Optional;
import org.bookholder.footage.Channels;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/**
 * One stream of a file's sound: one channel of 16-bit samples at the rate that is asked for, or every channel, from the file's first
 * picture on, or if there is no picture, from its first sound in any stream.
 *
 * <p>What is missing at the beginning or in between is silence, so that a sample's number tells its time. A file that
 * breaks off in the middle ends there. Confined to one thread.
 */
final class StreamSound implements AutoCloseable {
    private final OpenFile file;
    private final AVStream stream;
    private final AVCodecContext decoder;
    private final AVPacket packet = avcodec.av_packet_alloc();
    private final AVFrame frame = avutil.av_frame_alloc();
    private final int rate;
    private final Optional<Channels> heard;
    private final long zero;
    private @Nullable Mixdown mixdown;
    private long given;
    private boolean anywhere;
    private boolean drained;

    private StreamSound(
            OpenFile file, AVStream stream, AVCodecContext decoder, int rate, Optional<Channels> heard, long zero) {
        this.file = file;
        this.stream = stream;
        this.decoder = decoder;
        this.rate = rate;
        this.heard = heard;
        this.zero = zero;
    }

    /**
     * Opens a stream; the file is closed with it.
     *
     * @param rate samples a second that are wanted
     * @param heard the channels that become one; empty to keep every channel, sample by sample beside the others
     * @throws ProblemException if FFmpeg cannot decode it; the file is closed then
     */
    static StreamSound open(OpenFile file, AVStream stream, int rate, Optional<Channels> heard)
            throws ProblemException {
        try {
            AVCodecContext decoder = Decoder.context(
                    file.path(),
                    stream,
                    1,
                    "sound",
                    "convert its sound to AAC or PCM, or name the recorder's own file");
            file.only(stream);
            return new StreamSound(file, stream, decoder, rate, heard, file.begins());
        } catch (ProblemException e) {
            file.close();
            throw e;
        }
    }

    /** Leaves out all but about the last second, without reading it; nothing where that cannot be done. */
    void toEnd() {
        AVFormatContext context = file.context();
        if (context.duration() != avutil.AV_NOPTS_VALUE) {
            long begins = context.start_time() == avutil.AV_NOPTS_VALUE ? 0 : context.start_time();
            long from = begins + Math.max(0, context.duration() - avutil.AV_TIME_BASE);
            avformat.av_seek_frame(context, -1, from, avformat.AVSEEK_FLAG_BACKWARD);
            anywhere = true;
        }
    }

    /** When its first sample is due in the file's own time. */
    StreamTime begins() {
        return new StreamTime(Math.max(0, zero));
    }

    /** How many channels are read beside each other; known once something was read. */
    int width() {
        return mixdown == null ? 1 : mixdown.width();
    }

    /** The samples that come next, some thousands; empty at the end. */
    Optional<short[]> read() throws ProblemException {
        while (true) {
            int got = avcodec.avcodec_receive_frame(decoder, frame);
            if (got == 0) {
                short[] samples = samples();
                avutil.av_frame_unref(frame);
                if (samples.length > 0) {
                    given += samples.length / width();
                    return Optional.of(samples);
                }
            } else if (got == avutil.AVERROR_EOF || drained || !feed()) {
                return rest();
            }
        }
    }

    /** Hands the decoder the next packet of sound; false when there is nothing left to hand it. */
    private boolean feed() {
        while (avformat.av_read_frame(file.context(), packet) >= 0) {
            boolean ours = packet.stream_index() == stream.index();
            if (ours) {
                // A damaged packet is passed over; what is missing becomes silence.
                avcodec.avcodec_send_packet(decoder, packet);
            }
            avcodec.av_packet_unref(packet);
            if (ours) {
                return true;
            }
        }
        drained = avcodec.avcodec_send_packet(decoder, null) < 0;
        return !drained;
    }

    private short[] samples() throws ProblemException {
        Mixdown mix = mixdown;
        if (mix == null) {
            mix = Mixdown.of(frame, rate, heard, file.path());
            mixdown = mix;
        }
        long due = due(mix);
        if (anywhere) {
            given = due;
            anywhere = false;
        }
        short[] mixed = mix.mix(frame);
        return Seam.join(given * mix.width(), due * mix.width(), mixed, rate * mix.width());
    }

    /** The number of the sample that the frame's first one is to be; where it says nothing, the next. */
    private long due(Mixdown mix) {
        long time = frame.best_effort_timestamp();
        if (time == avutil.AV_NOPTS_VALUE) {
            return given;
        }
        long ticks = FootageFile.ticks(time, stream.time_base()) - zero;
        return Math.floorDiv(ticks * rate, StreamTime.TICKS_PER_SECOND) - mix.waiting();
    }

    private Optional<short[]> rest() throws ProblemException {
        if (mixdown == null) {
            return Optional.empty();
        }
        short[] rest = mixdown.rest();
        given += rest.length / width();
        return rest.length == 0 ? Optional.empty() : Optional.of(rest);
    }

    @Override
    public void close() {
        if (mixdown != null) {
            mixdown.close();
        }
        avutil.av_frame_free(frame);
        avcodec.av_packet_free(packet);
        avcodec.avcodec_free_context(decoder);
        file.close();
    }

    /** Joins decoded samples to those before by their times. */
    static final class Seam {
        /** Times are rounded in the file; only more than this is a gap, in seconds. */
        private static final double SLACK = 0.04;

        private Seam() {}

        /** Samples, and more behind them. */
        static short[] append(short[] samples, short[] more) {
            short[] all = Arrays.copyOf(samples, samples.length + more.length);
            System.arraycopy(more, 0, all, samples.length, more.length);
            return all;
        }

        /** The samples from number {@code next} on, if {@code samples} begin with number {@code due}. */
        static short[] join(long next, long due, short[] samples, int rate) {
            long late = due - next;
            boolean inStep = next > 0 && Math.abs(late) <= SLACK * rate;
            if (late == 0 || inStep) {
                return samples;
            }
            if (late > 0) {
                short[] filled = new short[(int) (late + samples.length)];
                ShortBuffer.wrap(filled).position((int) late).put(samples);
                return filled;
            }
            int cut = (int) Math.min(samples.length, -late);
            return Arrays.copyOfRange(samples, cut, samples.length);
        }
    }
}
