package org.bookholder.footage.ffmpeg;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/** Decodes one stream of a file. Confined to one thread. */
final class Decoder implements AutoCloseable {
    private final AVStream stream;
    private final AVCodecContext context;
    private final AVFrame frame = avutil.av_frame_alloc();
    private long damaged;

    private Decoder(AVStream stream, AVCodecContext context) {
        this.stream = stream;
        this.context = context;
    }

    /**
     * Opens a decoder.
     *
     * @param what the stream, for messages: "picture" or "sound"
     */
    static Decoder open(Path path, AVStream stream, String what) throws ProblemException {
        // As many threads as the machine has cores.
        return new Decoder(stream, context(path, stream, 0, what, "export it again, as H.264 with AAC"));
    }

    /**
     * A context in which FFmpeg decodes a stream.
     *
     * @param threads how many it may use, 0 for as many as the machine has cores
     * @param what the stream, for messages
     * @param remedy what to do if it cannot be decoded, for messages
     */
    static AVCodecContext context(Path path, AVStream stream, int threads, String what, String remedy)
            throws ProblemException {
        AVCodec codec = avcodec.avcodec_find_decoder(stream.codecpar().codec_id());
        if (codec == null || codec.isNull()) {
            throw new ProblemException("its " + what + " is stored in an unknown way", path.toString(), remedy);
        }
        AVCodecContext context = avcodec.avcodec_alloc_context3(codec);
        avcodec.avcodec_parameters_to_context(context, stream.codecpar());
        context.pkt_timebase(stream.time_base());
        context.thread_count(threads);
        int opened = avcodec.avcodec_open2(context, codec, (AVDictionary) null);
        if (opened < 0) {
            avcodec.avcodec_free_context(context);
            throw new ProblemException(
                    "its " + what + " cannot be decoded (" + OpenFile.reason(opened) + ")", path.toString(), remedy);
        }
        return context;
    }

    boolean takes(AVPacket packet) {
        return packet.stream_index() == stream.index();
    }

    /** Decodes a packet, null at the end, and gives every finished frame to {@code taker}. */
    void decode(@Nullable AVPacket packet, Taker taker) throws ProblemException {
        if (avcodec.avcodec_send_packet(context, packet) < 0 && packet != null) {
            damaged++;
        }
        while (avcodec.avcodec_receive_frame(context, frame) == 0) {
            taker.take(frame, time());
            avutil.av_frame_unref(frame);
        }
    }

    private Optional<StreamTime> time() {
        long time = frame.best_effort_timestamp();
        return time == avutil.AV_NOPTS_VALUE
                ? Optional.empty()
                : Optional.of(new StreamTime(Math.max(0, FootageFile.ticks(time, stream.time_base()))));
    }

    /** How many packets could not be decoded. */
    long damaged() {
        return damaged;
    }

    @Override
    public void close() {
        avutil.av_frame_free(frame);
        avcodec.avcodec_free_context(context);
    }

    /** Who takes decoded frames. */
    @FunctionalInterface
    interface Taker {
        /** Takes a frame, which is lent for the call; its time, if the file says one. */
        void take(AVFrame frame, Optional<StreamTime> at) throws ProblemException;
    }
}
