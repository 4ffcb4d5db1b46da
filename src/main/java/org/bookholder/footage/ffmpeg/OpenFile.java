package org.bookholder.footage.ffmpeg;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVInputFormat;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVDictionaryEntry;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;
import org.jspecify.annotations.Nullable;

/** A file that FFmpeg has opened and looked into. Confined to one thread. */
final class OpenFile implements AutoCloseable {
    private static final int MESSAGE = 256;

    /**
     * FFmpeg's readers for what cameras, recorders and editing programs write. The others include playlists, which make it open
     * any files that they name, and readers for rare formats, which are tested less.
     */
    static final String KINDS = "mov,matroska,mxf,mpegts,mpeg,avi,asf,dv,wav,w64,aiff,caf,flac,mp3,aac,ogg";

    /** FFmpeg's code for a format that is not on the list: EINVAL on every system. */
    private static final int NOT_OF_THESE = -22;

    private static final String NAME_THE_FILE =
            "name a film or sound file itself, such as MP4, MOV, MXF, MKV, MTS, AVI, WAV or FLAC";

    private final Path path;
    private final AVFormatContext context;

    private OpenFile(Path path, AVFormatContext context) {
        this.path = path;
        this.context = context;
    }

    static OpenFile open(Path path) throws ProblemException {
        return open(path, Optional.empty());
    }

    /**
     * Opens a file.
     *
     * @param reader FFmpeg's reader for it; empty if that is found by its content, among those of {@link #KINDS}
     */
    static OpenFile open(Path path, Optional<String> reader) throws ProblemException {
        if (!Files.isRegularFile(path)) {
            throw new ProblemException("there is no such file", path.toString(), "name a film or sound file");
        }
        avutil.av_log_set_level(avutil.AV_LOG_QUIET);
        AVFormatContext context = new AVFormatContext(null);
        // Named as a file, so that a colon in it is not taken for a protocol, and in UTF-8 whatever the locale.
        try (BytePointer name =
                new BytePointer(("file:" + path.toAbsolutePath() + "\0").getBytes(StandardCharsets.UTF_8))) {
            AVDictionary limits = limits(reader.orElse(KINDS));
            @Nullable AVInputFormat format = reader.map(avformat::av_find_input_format).orElse(null);
            int opened = avformat.avformat_open_input(context, name, format, limits);
            avutil.av_dict_free(limits);
            if (opened == NOT_OF_THESE) {
                throw new ProblemException(
                        "this kind of file is not read as film or sound", path.toString(), NAME_THE_FILE);
            }
            if (opened < 0) {
                throw notUnderstood(path, opened);
            }
        }
        OpenFile file = new OpenFile(path, context);
        int found = avformat.avformat_find_stream_info(context, (AVDictionary) null);
        if (found < 0) {
            file.close();
            throw notUnderstood(path, found);
        }
        return file;
    }

    /** Only such files, and from them no way to others or to the network. */
    private static AVDictionary limits(String kinds) {
        AVDictionary limits = new AVDictionary(null);
        avutil.av_dict_set(limits, "protocol_whitelist", "file", 0);
        avutil.av_dict_set(limits, "format_whitelist", kinds, 0);
        return limits;
    }

    Path path() {
        return path;
    }

    AVFormatContext context() {
        return context;
    }

    /** The stream of a kind that FFmpeg holds for the main one. */
    Optional<AVStream> best(int kind) {
        int index = avformat.av_find_best_stream(context, kind, -1, -1, (org.bytedeco.ffmpeg.avcodec.AVCodec) null, 0);
        return index < 0 ? Optional.empty() : Optional.of(context.streams(index));
    }

    /**
     * The streams that are its sound: the main one, or all if each has one channel, as of cameras that store each microphone by itself.
     */
    List<AVStream> sounds() {
        List<AVStream> mono = new ArrayList<>();
        int all = 0;
        for (int i = 0; i < context.nb_streams(); i++) {
            AVCodecParameters about = context.streams(i).codecpar();
            if (about.codec_type() == avutil.AVMEDIA_TYPE_AUDIO) {
                all++;
                if (about.ch_layout().nb_channels() == 1) {
                    mono.add(context.streams(i));
                }
            }
        }
        return all > 1 && mono.size() == all
                ? mono
                : best(avutil.AVMEDIA_TYPE_AUDIO).stream().toList();
    }

    /** The main stream of moving pictures; a cover that is attached to a file with sound is none. */
    Optional<AVStream> picture() {
        return best(avutil.AVMEDIA_TYPE_VIDEO)
                .filter(s -> (s.disposition() & avformat.AV_DISPOSITION_ATTACHED_PIC) == 0);
    }

    /** When its first picture, or else its first sound in any of its streams, is due, in ticks of its own time. */
    long begins() {
        return picture()
                .flatMap(OpenFile::begins)
                .or(() -> sounds().stream()
                        .flatMap(sound -> begins(sound).stream())
                        .min(Comparator.naturalOrder()))
                .orElse(0L);
    }

    private static Optional<Long> begins(AVStream stream) {
        return stream.start_time() == avutil.AV_NOPTS_VALUE
                ? Optional.empty()
                : Optional.of(FootageFile.ticks(stream.start_time(), stream.time_base()));
    }

    /** Has nothing given but one stream's packets, so that the pictures of a large file need not be read from the disk. */
    void only(AVStream stream) {
        for (int i = 0; i < context.nb_streams(); i++) {
            if (i != stream.index()) {
                context.streams(i).discard(avcodec.AVDISCARD_ALL);
            }
        }
    }

    /** A metadata entry of the file or of one of its streams. */
    Optional<String> note(String name) {
        Optional<String> found = note(context.metadata(), name);
        for (int i = 0; i < context.nb_streams() && found.isEmpty(); i++) {
            found = note(context.streams(i).metadata(), name);
        }
        return found;
    }

    private static Optional<String> note(AVDictionary notes, String name) {
        if (notes == null || notes.isNull()) {
            return Optional.empty();
        }
        AVDictionaryEntry entry = avutil.av_dict_get(notes, name, null, 0);
        return entry == null || entry.isNull()
                ? Optional.empty()
                : Optional.of(entry.value().getString(StandardCharsets.UTF_8));
    }

    /** FFmpeg's text for an error code. */
    static String reason(int error) {
        try (BytePointer text = new BytePointer(MESSAGE)) {
            avutil.av_strerror(error, text, MESSAGE);
            // Else the whole buffer would be taken for text, and what lay in it before.
            return text.limit(BytePointer.strlen(text)).getString(StandardCharsets.UTF_8);
        }
    }

    private static ProblemException notUnderstood(Path path, int error) {
        return new ProblemException(
                "cannot be read as film or sound (" + reason(error) + ")",
                path.toString(),
                "play it to see whether it is whole; if not, copy it from the card or export it again");
    }

    @Override
    public void close() {
        avformat.avformat_close_input(context);
    }
}
