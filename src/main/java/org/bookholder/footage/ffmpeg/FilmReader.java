package org.bookholder.footage.ffmpeg;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.footage.Film;
import org.bookholder.footage.Footage;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/**
 * Reads a film once from beginning to end: the brightness of some pixels of each frame, its colours in coarse parts, and
 * all of its sound. Confined to one thread.
 */
public final class FilmReader implements AutoCloseable {
    private final OpenFile file;
    private final Film film;
    private final Optional<Decoder> pictures;
    private final Optional<Decoder> sounds;
    private final LumaSampler reducer = new LumaSampler();
    private final ColourSampler colours = new ColourSampler();
    private final AVPacket packet = avcodec.av_packet_alloc();
    private @Nullable ChannelSplitter separator;
    private StreamTime reached = StreamTime.ZERO;
    private StreamTime pictureEnd = StreamTime.ZERO;
    private StreamTime soundEnd = StreamTime.ZERO;
    private boolean ended;

    private FilmReader(OpenFile file, Film film, Optional<Decoder> pictures, Optional<Decoder> sounds) {
        this.file = file;
        this.film = film;
        this.pictures = pictures;
        this.sounds = sounds;
    }

    /**
     * Opens a film.
     *
     * @throws ProblemException if it is not there, or holds neither picture nor sound that FFmpeg can decode
     */
    public static FilmReader open(Path path) throws ProblemException {
        Footage footage = FootageFile.look(path);
        OpenFile file = OpenFile.open(path);
        Optional<Decoder> pictures = Optional.empty();
        try {
            Optional<AVStream> video = footage.picture().flatMap(p -> file.best(avutil.AVMEDIA_TYPE_VIDEO));
            Optional<AVStream> audio = file.best(avutil.AVMEDIA_TYPE_AUDIO);
            if (video.isPresent()) {
                pictures = Optional.of(Decoder.open(path, video.get(), "picture"));
            }
            Optional<Decoder> sounds =
                    audio.isPresent() ? Optional.of(Decoder.open(path, audio.get(), "sound")) : Optional.empty();
            return new FilmReader(file, film(file, footage, video, audio), pictures, sounds);
        } catch (ProblemException e) {
            pictures.ifPresent(Decoder::close);
            file.close();
            throw e;
        }
    }

    /** The film as its file describes it. */
    public Film film() {
        return film;
    }

    /** When its first picture is due in its own time, or its first sound if there is no picture: followed sound counts from there. */
    public StreamTime begins() {
        return new StreamTime(Math.max(0, file.begins()));
    }

    /** How far it was read. */
    public StreamTime reached() {
        return reached;
    }

    /** When the last picture that was read ends. */
    public StreamTime pictureEnd() {
        return pictureEnd;
    }

    /** When the last sound that was read ends. */
    public StreamTime soundEnd() {
        return soundEnd;
    }

    /** How many pieces of the film are damaged so that they cannot be shown or heard. */
    public long damaged() {
        return pictures.map(Decoder::damaged).orElse(0L)
                + sounds.map(Decoder::damaged).orElse(0L);
    }

    /** Reads the next frame or frames; returns false at the end. A file that breaks off in the middle ends there. */
    public boolean read(Film.Viewer viewer) throws ProblemException {
        if (ended) {
            return false;
        }
        if (avformat.av_read_frame(file.context(), packet) < 0) {
            ended = true;
            decode(null, viewer);
            return false;
        }
        decode(packet, viewer);
        avcodec.av_packet_unref(packet);
        return true;
    }

    private void decode(@Nullable AVPacket next, Film.Viewer viewer) throws ProblemException {
        if (pictures.isPresent() && (next == null || pictures.get().takes(next))) {
            pictures.get().decode(next, (frame, at) -> picture(frame, at.orElse(pictureEnd), viewer));
        }
        if (sounds.isPresent() && (next == null || sounds.get().takes(next))) {
            sounds.get().decode(next, (frame, at) -> sound(frame, at.orElse(soundEnd), viewer));
        }
    }

    private void picture(AVFrame frame, StreamTime at, Film.Viewer viewer) {
        viewer.picture(at, reducer.luma(frame), colours.means(frame));
        StreamTime shown = StreamTime.ofSeconds(film.picture()
                .map(p -> (double) p.rate().denominator() / p.rate().numerator())
                .orElse(0.0));
        pictureEnd = StreamTime.max(pictureEnd, at.plus(shown));
        reached = StreamTime.max(reached, at);
    }

    private void sound(AVFrame frame, StreamTime at, Film.Viewer viewer) throws ProblemException {
        ChannelSplitter apart = separator;
        if (apart == null) {
            apart = ChannelSplitter.of(frame, file.path());
            separator = apart;
        }
        float[][] channels = apart.channels(frame);
        if (channels[0].length > 0) {
            viewer.sound(at, channels);
            soundEnd = at.plus(StreamTime.ofSamples(channels[0].length, frame.sample_rate()));
            reached = StreamTime.max(reached, at);
        }
    }

    private static Film film(OpenFile file, Footage footage, Optional<AVStream> video, Optional<AVStream> audio) {
        long whole = file.context().duration();
        return new Film(
                footage.file(),
                footage.file().toFile().length(),
                container(file),
                whole == avutil.AV_NOPTS_VALUE ? footage.length() : StreamTime.ofSeconds(whole / 1e6),
                video.map(stream -> picture(file, stream, footage.picture().orElseThrow())),
                audio.map(FilmReader::sound));
    }

    private static String container(OpenFile file) {
        String names = file.context().iformat().name().getString(StandardCharsets.UTF_8);
        if (names.startsWith("mov,")) {
            return file.note("major_brand")
                            .filter(brand -> brand.startsWith("qt"))
                            .isPresent()
                    ? "mov"
                    : "mp4";
        }
        return names.startsWith("matroska") ? "mkv" : names.replaceFirst(",.*", "");
    }

    private static Film.Picture picture(OpenFile file, AVStream stream, Footage.Picture seen) {
        AVCodecParameters about = stream.codecpar();
        AVRational pixel = avformat.av_guess_sample_aspect_ratio(file.context(), stream, null);
        double squeeze = pixel.num() > 0 && pixel.den() > 0 ? (double) pixel.num() / pixel.den() : 1;
        double shape = squeeze * about.width() / about.height();
        boolean turned = PictureFile.quarterTurns(about) % 2 != 0;
        var pixels = avutil.av_get_pix_fmt_name(about.format());
        return new Film.Picture(
                codec(about),
                pixels == null ? "unknown" : pixels.getString(StandardCharsets.UTF_8),
                turned ? about.height() : about.width(),
                turned ? about.width() : about.height(),
                turned ? 1 / shape : shape,
                about.field_order() > avcodec.AV_FIELD_PROGRESSIVE,
                seen.rate(),
                seen.variable(),
                about.bit_rate());
    }

    private static Film.Sound sound(AVStream stream) {
        AVCodecParameters about = stream.codecpar();
        int channels = about.ch_layout().nb_channels();
        return new Film.Sound(
                codec(about),
                about.sample_rate(),
                channels,
                about.bit_rate(),
                IntStream.range(0, channels)
                        .mapToObj(i -> weight(avutil.av_channel_layout_channel_from_index(about.ch_layout(), i)))
                        .toList());
    }

    /** Surround channels count more, the low-frequency channel not at all. */
    private static double weight(int channel) {
        if (channel == avutil.AV_CHAN_LOW_FREQUENCY || channel == avutil.AV_CHAN_LOW_FREQUENCY_2) {
            return 0;
        }
        boolean behind = channel == avutil.AV_CHAN_BACK_LEFT
                || channel == avutil.AV_CHAN_BACK_RIGHT
                || channel == avutil.AV_CHAN_SIDE_LEFT
                || channel == avutil.AV_CHAN_SIDE_RIGHT;
        return behind ? 1.41 : 1.0;
    }

    private static String codec(AVCodecParameters about) {
        return avcodec.avcodec_get_name(about.codec_id()).getString(StandardCharsets.UTF_8);
    }

    @Override
    public void close() {
        pictures.ifPresent(Decoder::close);
        sounds.ifPresent(Decoder::close);
        if (separator != null) {
            separator.close();
        }
        reducer.close();
        colours.close();
        avcodec.av_packet_free(packet);
        file.close();
    }
}
