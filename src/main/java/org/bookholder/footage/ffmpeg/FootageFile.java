package org.bookholder.footage.ffmpeg;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import org.bookholder.footage.Footage;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avformat.AVIndexEntry;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;

/** Reads the properties of a camera's or recorder's file without decoding it. */
public final class FootageFile {
    /** A frame that is longer or shorter than the mean by more than this share is out of step. */
    private static final double STEP = 0.25;

    /** With more than this share of frames out of step the rate is variable. */
    private static final double SHARE = 0.01;

    private FootageFile() {}

    /**
     * What a file holds. A picture of which it gives no size counts as none.
     *
     * @throws ProblemException if it is not there or FFmpeg cannot make anything of it
     */
    public static Footage look(Path path) throws ProblemException {
        try (OpenFile file = OpenFile.open(path)) {
            Optional<AVStream> video = file.picture()
                    .filter(s -> s.codecpar().width() > 0 && s.codecpar().height() > 0);
            Optional<AVStream> audio = file.best(avutil.AVMEDIA_TYPE_AUDIO);
            if (video.isEmpty() && audio.isEmpty()) {
                throw new ProblemException("holds neither film nor sound", path.toString(), "name another file");
            }
            return new Footage(
                    path.toAbsolutePath(),
                    length(file, video.or(() -> audio).orElseThrow()),
                    video.map(FootageFile::picture),
                    audio.map(stream -> sound(stream, file.sounds())),
                    file.note("timecode"),
                    audio.flatMap(stream -> sinceMidnight(file, stream)),
                    file.note("creation_time").flatMap(FootageFile::instant));
        }
    }

    private static StreamTime length(OpenFile file, AVStream main) {
        long ticks = ticks(main.duration(), main.time_base());
        if (main.duration() == avutil.AV_NOPTS_VALUE) {
            // The container's own count, in millionths.
            long whole = file.context().duration();
            ticks = whole == avutil.AV_NOPTS_VALUE ? 0 : whole * 6 / 125;
        }
        return new StreamTime(Math.max(0, ticks));
    }

    private static Footage.Picture picture(AVStream stream) {
        AVCodecParameters about = stream.codecpar();
        AVRational mean = stream.avg_frame_rate();
        AVRational base = stream.r_frame_rate();
        AVRational said = mean.num() > 0 && mean.den() > 0 ? mean : base;
        boolean known = said.num() > 0 && said.den() > 0;
        boolean wavers = !known || wavers(stream, mean, base);
        return new Footage.Picture(
                about.width(), about.height(), known ? rate(said, base, wavers) : FrameRate.FPS_25, wavers);
    }

    /**
     * The standard rate, if it is one. The mean of a file whose picture begins or ends between two frames is a little off; the rate
     * that its frames keep is meant then.
     */
    private static FrameRate rate(AVRational said, AVRational base, boolean wavers) {
        Optional<FrameRate> kept =
                wavers || off(said, base) > SHARE ? Optional.empty() : FrameRate.near(base.num(), base.den());
        return FrameRate.near(said.num(), said.den())
                .or(() -> kept)
                .orElseGet(() -> new FrameRate(said.num(), said.den()));
    }

    private static double off(AVRational mean, AVRational base) {
        return Math.abs((double) mean.num() * base.den() / Math.max(1.0, (double) mean.den() * base.num()) - 1);
    }

    /** By the times of all frames, where the file has an index of them; else by what it says of its rate. */
    private static boolean wavers(AVStream stream, AVRational mean, AVRational base) {
        int count = avformat.avformat_index_get_entries_count(stream);
        if (count < 3) {
            return mean.num() > 0 && base.num() > 0 && off(mean, base) > SHARE;
        }
        long first = time(stream, 0);
        double step = (double) (time(stream, count - 1) - first) / (count - 1);
        int outOfStep = 0;
        long last = first;
        for (int i = 1; i < count; i++) {
            long now = time(stream, i);
            outOfStep += Math.abs(now - last - step) > STEP * step ? 1 : 0;
            last = now;
        }
        return outOfStep > SHARE * count;
    }

    private static long time(AVStream stream, int entry) {
        AVIndexEntry found = avformat.avformat_index_get_entry(stream, entry);
        return found.timestamp();
    }

    private static Footage.Sound sound(AVStream stream, List<AVStream> all) {
        AVCodecParameters about = stream.codecpar();
        String codec = avcodec.avcodec_get_name(about.codec_id()).getString(StandardCharsets.UTF_8);
        return new Footage.Sound(
                about.sample_rate(), Math.max(all.size(), about.ch_layout().nb_channels()), codec);
    }

    private static Optional<StreamTime> sinceMidnight(OpenFile file, AVStream audio) {
        int rate = audio.codecpar().sample_rate();
        return file.note("time_reference")
                .filter(text -> text.matches("\\d{1,15}") && rate > 0)
                .map(text -> StreamTime.ofSamples(Long.parseLong(text), rate));
    }

    private static Optional<Instant> instant(String text) {
        try {
            return Optional.of(Instant.parse(text));
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }

    /** A count of a stream's units in ticks. */
    static long ticks(long units, AVRational base) {
        try (AVRational tick = new AVRational()) {
            tick.num(1).den(StreamTime.TICKS_PER_SECOND);
            return avutil.av_rescale_q(units, base, tick);
        }
    }
}
